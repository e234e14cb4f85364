/**
 * The job file, and the one place that knows the order of things.
 *
 * <p>May import: every room below.
 */
package org.amperskin.job;
