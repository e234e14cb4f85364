/**
 * Sparse symmetric linear systems, as surfaces and grids bring them up.
 *
 * <p>Imports nothing of ours. Read {@link org.amperskin.linear.SparseSystem} first:
 *
 * <pre>{@code
 * SparseSystem system = SparseSystem.of(n, rows, columns, values);
 * system.solve(rightSide, start, 1e-10);
 * }</pre>
 */
package org.amperskin.linear;
