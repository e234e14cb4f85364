/**
 * Answers as text and JSON.
 *
 * <p>May import: {@code job}.
 */
package org.amperskin.report;
