/**
 * Quantities with their units, and the only conversion factors of the project.
 *
 * <p>May import: nothing of ours.
 */
package org.amperskin.units;
