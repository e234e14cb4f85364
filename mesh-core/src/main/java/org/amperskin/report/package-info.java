/**
 * Answers as text of 80 columns and as JSON.
 *
 * <p>May import: {@code job}. Read {@link org.amperskin.report.PlanText} and {@link
 * org.amperskin.report.JsonReports} first; the JSON shapes are written down as JSON Schema in the
 * resources beside them.
 *
 * <pre>{@code
 * System.out.print(PlanText.of(estimate));
 * }</pre>
 */
package org.amperskin.report;
