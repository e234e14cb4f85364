/**
 * Recipes, Faraday's law, tank and brush steps, the plan. Knows no mesh: geometry arrives as one
 * small record of plain quantities, {@link org.amperskin.plating.PlatedSurface}, so the physics can
 * be checked by hand with no file in sight.
 *
 * <p>Read {@link org.amperskin.plating.TankStep} first, then {@link
 * org.amperskin.plating.BrushStep}; {@link org.amperskin.plating.Plan} puts them in order. Numbers
 * of a solution stand in recipe files beside this package, each with mark and source; numbers of
 * nature in {@link org.amperskin.plating.Constant}.
 *
 * <pre>{@code
 * RecipeLibrary recipes = RecipeLibrary.standard();
 * StepEstimate nickel =
 *     TankStep.of("nickel", recipes.find("nickel-watts"), PlatedSurface.bare(2000), Target.um(10))
 *         .build()
 *         .estimate();
 * nickel.currentA(); // 0.400 A at the recipe's 2 A/dm2
 * }</pre>
 *
 * <p>Left out on purpose: silver and gold, since the only solutions with numbers at hand are
 * cyanides, and the one printed figure for silver without cyanide is a plain misprint; and any
 * other cyanide bath. Cautions go with every step and cannot be switched off.
 *
 * <p>May import: {@code units}, {@code yaml}.
 */
package org.amperskin.plating;
