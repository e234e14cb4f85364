package org.amperskin.testmeshes;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.amperskin.mesh.SurfaceMesh;

/** 3MF packages as bytes. */
public final class PackageBytes {
  /** Name space of the core, of the 3MF Core Specification. */
  public static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

  /** Where the root model lies. */
  public static final String ROOT = "3D/3dmodel.model";

  private static final String RELATION =
      "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";

  private PackageBytes() {}

  /** A package of one model part. */
  public static byte[] of(String model) {
    return of(Map.of(ROOT, model.getBytes(StandardCharsets.UTF_8)));
  }

  /** A package of those parts and what points to the root model. */
  public static byte[] of(Map<String, byte[]> parts) {
    return zip(withStart(parts), false);
  }

  /** The parts and the relationships that name the root model as the start. */
  public static Map<String, byte[]> withStart(Map<String, byte[]> parts) {
    Map<String, byte[]> all = new LinkedHashMap<>();
    all.put(
        "_rels/.rels",
        ("<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/relationships'>"
                + "<Relationship Target='/3D/3dmodel.model' Id='a' Type='"
                + RELATION
                + "'/></Relationships>")
            .getBytes(StandardCharsets.UTF_8));
    all.putAll(parts);
    return all;
  }

  /** A ZIP archive, its entries stored with sizes or deflated with data descriptors. */
  public static byte[] zip(Map<String, byte[]> parts, boolean stored) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        ZipEntry e = new ZipEntry(part.getKey());
        e.setTime(0);
        if (stored) {
          CRC32 crc = new CRC32();
          crc.update(part.getValue());
          e.setMethod(ZipEntry.STORED);
          e.setSize(part.getValue().length);
          e.setCrc(crc.getValue());
        }
        zip.putNextEntry(e);
        zip.write(part.getValue());
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** A model of one mesh in that unit. */
  public static String model(String unit, SurfaceMesh mesh) {
    return model(unit, "", object(1, "", mesh), "<item objectid='1'/>");
  }

  /** A model of those resources and items. */
  public static String model(String unit, String attributes, String resources, String items) {
    return "<?xml version='1.0' encoding='UTF-8'?>\n<model unit='"
        + unit
        + "' xmlns='"
        + CORE
        + "' "
        + attributes
        + ">\n<resources>\n"
        + resources
        + "\n</resources>\n<build>"
        + items
        + "</build>\n</model>\n";
  }

  /** An object with a mesh. */
  public static String object(int id, String attributes, SurfaceMesh mesh) {
    return "<object id='" + id + "' " + attributes + ">" + mesh(mesh) + "</object>\n";
  }

  /** A mesh element. */
  public static String mesh(SurfaceMesh mesh) {
    StringBuilder s = new StringBuilder("<mesh>\n<vertices>\n");
    for (int v = 0; v < mesh.vertexCount(); v++) {
      s.append("<vertex x='" + mesh.x(v) + "' y='" + mesh.y(v) + "' z='" + mesh.z(v) + "'/>\n");
    }
    s.append("</vertices>\n<triangles>\n");
    for (int f = 0; f < mesh.faceCount(); f++) {
      s.append("<triangle v1='" + mesh.corner(f, 0) + "' v2='" + mesh.corner(f, 1));
      s.append("' v3='" + mesh.corner(f, 2) + "'/>\n");
    }
    return s.append("</triangles>\n</mesh>").toString();
  }
}
