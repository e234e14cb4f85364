/**
 * The job file, and the one place that knows the order of things.
 *
 * <p>May import: every room below. Read {@link org.amperskin.job.Job} (what is asked), {@link
 * org.amperskin.job.JobRun} (the order) and {@link org.amperskin.job.Estimate} (the answer).
 *
 * <pre>{@code
 * Job job = JobFile.read(Path.of("visor.yaml"), RecipeLibrary.standard());
 * Estimate estimate = JobRun.of(job, Progress.SILENT);
 * }</pre>
 */
package org.amperskin.job;
