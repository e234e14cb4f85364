/**
 * Recipes, Faraday's law, tank and brush steps, the plan. Knows no mesh: geometry arrives as one
 * small record of plain quantities.
 *
 * <p>May import: {@code units}.
 */
package org.amperskin.plating;
