package org.amperskin.mesh;

/** Placeholder replaced in the next commit. */
final class MeshDiagnosis {
  private MeshDiagnosis() {}
}
