import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.io.euclidean.threed.FacetDefinition;
import org.apache.commons.geometry.io.euclidean.threed.FacetDefinitionReader;
import org.apache.commons.geometry.io.euclidean.threed.stl.StlFacetDefinitionReaders;

/** Reads an STL file with Apache Commons Geometry, facet by facet, and sums its area. */
public final class CommonsArea {
  private CommonsArea() {}

  public static void main(String[] args) throws IOException {
    long faces = 0;
    double area = 0;
    try (FacetDefinitionReader reader =
        StlFacetDefinitionReaders.create(Files.newInputStream(Path.of(args[0])), null)) {
      for (FacetDefinition f = reader.readFacet(); f != null; f = reader.readFacet()) {
        List<Vector3D> v = f.getVertices();
        Vector3D first = v.get(0);
        area += 0.5 * v.get(1).subtract(first).cross(v.get(2).subtract(first)).norm();
        faces++;
      }
    }
    System.out.println(faces + " facets, area " + area);
  }
}
