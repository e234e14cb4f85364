/**
 * Bench log, calibration, prices and mixing. The room is kept; nothing stands in it yet.
 *
 * <p>May import: {@code plating}.
 */
package org.amperskin.bench;
