package org.amperskin.mesh;

/**
 * A connected piece of surface: faces joined across edges that exactly two of them share.
 *
 * @param faces number of faces
 * @param areaMm2 their area (mm2)
 * @param volumeMm3 signed volume (mm3), positive if the faces look outward; NaN if not closed
 * @param closed true if no edge is open
 * @param inner true if it lies inside another closed body; false also where that was not looked at
 */
public record MeshBody(
    int faces, double areaMm2, double volumeMm3, boolean closed, boolean inner) {}
