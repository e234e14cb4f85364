package org.amperskin.io.threemf;

import java.util.List;

/**
 * Names of the standard, as published by the 3MF Consortium: Core Specification 1.4, Materials and
 * Properties 1.2, Production 1.2, Slice 1.0, Beam Lattice 1.2, Secure Content 1.0; for
 * relationships ECMA-376 part 2, Open Packaging Conventions.
 */
final class Namespaces {
  static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

  /** The core before its first release; meshes and builds are written alike. */
  static final String EARLY_CORE = "http://schemas.microsoft.com/3dmanufacturing/2013/01";

  static final String MATERIAL = "http://schemas.microsoft.com/3dmanufacturing/material/2015/02";
  static final String PRODUCTION =
      "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";
  static final String SLICE = "http://schemas.microsoft.com/3dmanufacturing/slice/2015/07";
  static final String BEAMS = "http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02";
  static final String BALLS =
      "http://schemas.microsoft.com/3dmanufacturing/beamlattice/balls/2020/07";
  static final String TRIANGLE_SETS =
      "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07";
  static final String SECURE = "http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04";

  static final String MODEL_RELATION =
      "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
  static final String KEYS_RELATION =
      "http://schemas.microsoft.com/3dmanufacturing/2019/04/keystore";
  static final String ENCRYPTED_RELATION =
      "http://schemas.openxmlformats.org/package/2006/relationships/encryptedfile";
  static final String RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships";

  /** Extensions a file may require: read, or of no effect on the faces, or told where met. */
  private static final List<String> UNDERSTOOD =
      List.of(CORE, EARLY_CORE, MATERIAL, PRODUCTION, SLICE, BEAMS, BALLS, TRIANGLE_SETS);

  private Namespaces() {}

  static boolean core(String uri) {
    return CORE.equals(uri) || EARLY_CORE.equals(uri);
  }

  static boolean understood(String uri) {
    return UNDERSTOOD.contains(uri);
  }
}
