/**
 * The triangle surface and what is wrong with it.
 *
 * <p>May import: {@code geom}. Read {@link org.amperskin.mesh.SurfaceMesh} first, then {@link
 * org.amperskin.mesh.MeshDiagnosis}.
 *
 * <pre>{@code
 * MeshDiagnosis d = MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT);
 * d.problems().forEach(p -> System.out.println(p.message()));
 * }</pre>
 */
package org.amperskin.mesh;
