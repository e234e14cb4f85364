package org.amperskin.io;

import java.nio.IntBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.io.euclidean.threed.FacetDefinition;
import org.apache.commons.geometry.io.euclidean.threed.IO3D;
import org.lwjgl.assimp.AIFace;
import org.lwjgl.assimp.AIMesh;
import org.lwjgl.assimp.AIScene;
import org.lwjgl.assimp.AIVector3D;
import org.lwjgl.assimp.Assimp;

/** General-purpose readers of the same formats, for comparison only. */
final class OracleReaders {
  private OracleReaders() {}

  /**
   * What a reader found.
   *
   * @param faces number of triangles or polygons
   * @param area their area, in the file's unit squared
   */
  record Found(long faces, double area) {}

  /** By the Open Asset Import Library through LWJGL, polygons triangulated by it. */
  static Found assimp(Path path) {
    AIScene scene = Assimp.aiImportFile(path.toString(), Assimp.aiProcess_Triangulate);
    if (scene == null) {
      throw new IllegalStateException(path + ": " + Assimp.aiGetErrorString());
    }
    try {
      long faces = 0;
      double area = 0;
      for (int m = 0; m < scene.mNumMeshes(); m++) {
        AIMesh mesh = AIMesh.create(scene.mMeshes().get(m));
        AIVector3D.Buffer points = mesh.mVertices();
        AIFace.Buffer all = mesh.mFaces();
        for (int f = 0; f < mesh.mNumFaces(); f++) {
          AIFace face = all.get(f);
          if (face.mNumIndices() == 3) {
            IntBuffer i = face.mIndices();
            faces++;
            area +=
                polygonArea(
                    List.of(
                        point(points.get(i.get(0))),
                        point(points.get(i.get(1))),
                        point(points.get(i.get(2)))));
          }
        }
      }
      return new Found(faces, area);
    } finally {
      Assimp.aiReleaseImport(scene);
    }
  }

  /** By Apache Commons Geometry; a polygon counts with the length of its Newell vector. */
  static Found commons(Path path) {
    try (Stream<FacetDefinition> facets = IO3D.facets(path)) {
      double[] sum = new double[2];
      facets.forEach(
          f -> {
            sum[0]++;
            sum[1] += polygonArea(f.getVertices());
          });
      return new Found((long) sum[0], sum[1]);
    }
  }

  private static Vector3D point(AIVector3D v) {
    return Vector3D.of(v.x(), v.y(), v.z());
  }

  private static double polygonArea(List<Vector3D> corners) {
    Vector3D sum = Vector3D.ZERO;
    Vector3D first = corners.get(0);
    for (int i = 1; i < corners.size() - 1; i++) {
      sum = sum.add(corners.get(i).subtract(first).cross(corners.get(i + 1).subtract(first)));
    }
    return sum.norm() / 2;
  }
}
