package org.amperskin.viewer.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.shape.VertexFormat;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.picture.Camera;
import org.amperskin.viewer.part.PaintedSurface;

/**
 * A part cut into meshes of about 50,000 faces, ready for the graphics pipeline.
 *
 * <p>Chunks keep memory low: the pipeline's pool grows with its largest mesh. Points are relative
 * to the middle of the part's box, so that single precision suffices. The texture coordinate of a
 * face is the middle of its region's texel in a strip of one texel per region, which gives exact
 * colours and makes recolouring a change of the strip only.
 */
final class PartChunks {
  static final int FACES_PER_CHUNK = 50_000;

  private PartChunks() {}

  /**
   * Builds the meshes; may run on any thread.
   *
   * @param wanted asked between chunks; false ends the work early
   */
  static List<TriangleMesh> of(PaintedSurface part, BooleanSupplier wanted) {
    SurfaceMesh mesh = part.mesh();
    Vec3 middle = Camera.boxOf(mesh).centre();
    int regions = part.regions().size();
    float[] strip = new float[2 * regions];
    for (int r = 0; r < regions; r++) {
      strip[2 * r] = (r + 0.5f) / regions;
      strip[2 * r + 1] = 0.5f;
    }
    int[] localOf = new int[mesh.vertexCount()];
    Arrays.fill(localOf, -1);
    List<TriangleMesh> chunks = new ArrayList<>();
    for (int from = 0; from < mesh.faceCount() && wanted.getAsBoolean(); from += FACES_PER_CHUNK) {
      int to = Math.min(mesh.faceCount(), from + FACES_PER_CHUNK);
      chunks.add(chunk(part, mesh, middle, strip, localOf, from, to));
    }
    return chunks;
  }

  private static TriangleMesh chunk(
      PaintedSurface part,
      SurfaceMesh mesh,
      Vec3 middle,
      float[] strip,
      int[] localOf,
      int from,
      int to) {
    int[] faces = new int[6 * (to - from)];
    float[] points = new float[9 * (to - from)];
    int[] used = new int[3 * (to - from)];
    int count = 0;
    int at = 0;
    for (int f = from; f < to; f++) {
      int region = part.region(f);
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(f, k);
        int local = localOf[v];
        if (local < 0) {
          local = count;
          localOf[v] = local;
          used[count] = v;
          points[3 * local] = (float) (mesh.x(v) - middle.x());
          points[3 * local + 1] = (float) (mesh.y(v) - middle.y());
          points[3 * local + 2] = (float) (mesh.z(v) - middle.z());
          count++;
        }
        faces[at++] = local;
        faces[at++] = region;
      }
    }
    for (int i = 0; i < count; i++) {
      localOf[used[i]] = -1;
    }
    TriangleMesh out = new TriangleMesh(VertexFormat.POINT_TEXCOORD);
    out.getPoints().setAll(points, 0, 3 * count);
    out.getTexCoords().setAll(strip);
    out.getFaces().setAll(faces);
    out.getFaceSmoothingGroups().setAll(new int[to - from]);
    return out;
  }
}
