import java.nio.FloatBuffer;
import java.nio.IntBuffer;
import org.lwjgl.assimp.AIFace;
import org.lwjgl.assimp.AIMesh;
import org.lwjgl.assimp.AIScene;
import org.lwjgl.assimp.Assimp;
import org.lwjgl.system.MemoryUtil;

/** Reads a file with the Open Asset Import Library, no clean-up steps, and sums its area. */
public final class AssimpArea {
  private AssimpArea() {}

  public static void main(String[] args) {
    AIScene scene = Assimp.aiImportFile(args[0], 0);
    if (scene == null) {
      throw new IllegalStateException(Assimp.aiGetErrorString());
    }
    long faces = 0;
    double area = 0;
    for (int m = 0; m < scene.mNumMeshes(); m++) {
      AIMesh mesh = AIMesh.create(scene.mMeshes().get(m));
      FloatBuffer p =
          MemoryUtil.memFloatBuffer(mesh.mVertices().address(), 3 * mesh.mNumVertices());
      AIFace.Buffer all = mesh.mFaces();
      for (int f = 0; f < mesh.mNumFaces(); f++) {
        IntBuffer i = all.get(f).mIndices();
        area += area(p, 3 * i.get(0), 3 * i.get(1), 3 * i.get(2));
        faces++;
      }
    }
    System.out.println(faces + " facets, area " + area);
  }

  private static double area(FloatBuffer p, int a, int b, int c) {
    double ux = (double) p.get(b) - p.get(a);
    double uy = (double) p.get(b + 1) - p.get(a + 1);
    double uz = (double) p.get(b + 2) - p.get(a + 2);
    double vx = (double) p.get(c) - p.get(a);
    double vy = (double) p.get(c + 1) - p.get(a + 1);
    double vz = (double) p.get(c + 2) - p.get(a + 2);
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    return 0.5 * Math.sqrt(nx * nx + ny * ny + nz * nz);
  }
}
