package org.amperskin.viewer.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.geometry.Point3D;
import javafx.scene.AmbientLight;
import javafx.scene.DirectionalLight;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.PerspectiveCamera;
import javafx.scene.SceneAntialiasing;
import javafx.scene.SubScene;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Pane;
import javafx.scene.layout.StackPane;
import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.DrawMode;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.transform.Affine;
import javafx.scene.transform.Scale;
import javafx.scene.transform.Translate;
import org.amperskin.geom.Box;
import org.amperskin.geom.Vec3;
import org.amperskin.picture.Camera;
import org.amperskin.viewer.part.PaintedSurface;

/**
 * The part in 3D.
 *
 * <p>The scene stands in view space (x right, y down, z away from the eye at 0) and the part is
 * moved into it, so that the lights go with the eye. The pipeline leaves the far side of a face
 * unlit; so the same meshes are drawn a second time for their far sides only, under lights of the
 * opposite direction, which is the same as turning the normals round. Parts whose far sides cannot
 * be seen go without ({@link FarSides}).
 */
final class SceneDisplay implements PartDisplay {
  private static final int SMOOTH_EDGES_UP_TO_FACES = 120_000;
  private static final int CHUNKS_PER_PULSE = 8;
  private static final double LINES_NEARER = 0.9995;
  private static final double[][] LIGHTS = {{0.30, 0.40, 1, 0.50}, {-0.80, -0.05, 0.6, 0.20}};
  private static final double AMBIENT = 0.45;

  private final Pane pane = new StackPane();
  private final PhongMaterial material = new PhongMaterial();
  private final PhongMaterial lineMaterial = new PhongMaterial(Color.BLACK);
  private final ReadOnlyBooleanWrapper drawn = new ReadOnlyBooleanWrapper();
  private final PerspectiveCamera eye = new PerspectiveCamera(true);
  private final Affine toView = new Affine();
  private final Translate toMiddle = new Translate();
  private final Group near = new Group();
  private final Group far = new Group();
  private final Group lines = new Group();
  private SubScene scene;
  private List<TriangleMesh> chunks = List.of();
  private volatile PaintedSurface part;
  private Vec3 middle = new Vec3(0, 0, 0);
  private double radiusMm = 1;
  private Camera camera;
  private int[] palette = {0xFF808080};
  private boolean farSides;
  private boolean unlit;
  private boolean facets;
  private Color ground = Color.WHITE;
  private AnimationTimer attaching;

  SceneDisplay() {
    material.setSpecularColor(Color.TRANSPARENT);
    lineMaterial.setSpecularColor(Color.TRANSPARENT);
    eye.setVerticalFieldOfView(true);
  }

  @Override
  public Node node() {
    return pane;
  }

  @Override
  public void show(PaintedSurface shown) {
    stopAttaching();
    drawn.set(false);
    part = shown;
    Box box = shown.box();
    middle = box.centre();
    radiusMm = 0.5 * box.diagonal();
    Thread builder =
        new Thread(
            () -> {
              boolean bothSides = FarSides.canBeSeen(shown.mesh());
              List<TriangleMesh> built = PartChunks.of(shown, () -> part == shown);
              Platform.runLater(
                  () -> {
                    if (part == shown) {
                      farSides = bothSides;
                      attach(built);
                    }
                  });
            },
            "chunks of " + shown.name());
    builder.setDaemon(true);
    builder.start();
  }

  /** Hands over a few chunks a pulse, so that no single pulse takes long. */
  private void attach(List<TriangleMesh> built) {
    chunks = built;
    near.getChildren().clear();
    far.getChildren().clear();
    lines.getChildren().clear();
    placeScene();
    List<TriangleMesh> waiting = new ArrayList<>(built);
    attaching =
        new AnimationTimer() {
          @Override
          public void handle(long now) {
            if (waiting.isEmpty()) {
              stopAttaching();
              drawn.set(true);
              return;
            }
            List<TriangleMesh> next =
                waiting.subList(0, Math.min(CHUNKS_PER_PULSE, waiting.size()));
            next.forEach(SceneDisplay.this::add);
            next.clear();
          }
        };
    attaching.start();
  }

  @Override
  public void clear() {
    stopAttaching();
    part = null;
    drawn.set(false);
    chunks = List.of();
    near.getChildren().clear();
    far.getChildren().clear();
    lines.getChildren().clear();
  }

  private void stopAttaching() {
    if (attaching != null) {
      attaching.stop();
      attaching = null;
    }
  }

  private void add(TriangleMesh mesh) {
    near.getChildren().add(meshView(mesh, CullFace.BACK, material));
    if (farSides) {
      far.getChildren().add(meshView(mesh, CullFace.FRONT, material));
    }
    if (facets) {
      addLines(mesh);
    }
  }

  private void addLines(TriangleMesh mesh) {
    MeshView view = meshView(mesh, CullFace.NONE, lineMaterial);
    view.setDrawMode(DrawMode.LINE);
    lines.getChildren().add(view);
  }

  private static MeshView meshView(TriangleMesh mesh, CullFace cull, PhongMaterial material) {
    MeshView view = new MeshView(mesh);
    view.setCullFace(cull);
    view.setMaterial(material);
    return view;
  }

  /** A sub-scene's edge smoothing is fixed, so each part gets a sub-scene of its own. */
  private void placeScene() {
    if (scene != null) {
      scene.setRoot(new Group());
      scene.setCamera(null);
      scene.widthProperty().unbind();
      scene.heightProperty().unbind();
    }
    near.getTransforms().setAll(toView, toMiddle);
    far.getTransforms().setAll(toView, toMiddle);
    lines
        .getTransforms()
        .setAll(new Scale(LINES_NEARER, LINES_NEARER, LINES_NEARER), toView, toMiddle);
    Group world = new Group(near, far, lines, new AmbientLight(Color.gray(AMBIENT)));
    for (double[] l : LIGHTS) {
      world.getChildren().add(light(l, 1, near));
      world.getChildren().add(light(l, -1, far));
    }
    world.setMouseTransparent(true);
    boolean smooth = part.mesh().faceCount() <= SMOOTH_EDGES_UP_TO_FACES;
    scene =
        new SubScene(
            world,
            100,
            100,
            true,
            smooth ? SceneAntialiasing.BALANCED : SceneAntialiasing.DISABLED);
    scene.setManaged(false);
    scene.setMouseTransparent(true);
    scene.setCamera(eye);
    scene.setFill(ground);
    scene.widthProperty().bind(pane.widthProperty());
    scene.heightProperty().bind(pane.heightProperty());
    pane.getChildren().setAll(scene);
    toMiddle.setX(middle.x());
    toMiddle.setY(middle.y());
    toMiddle.setZ(middle.z());
    look(camera);
    colour();
  }

  private static DirectionalLight light(double[] l, int sign, Group scope) {
    DirectionalLight light = new DirectionalLight(Color.gray(l[3]));
    light.setDirection(new Point3D(sign * l[0], sign * l[1], sign * l[2]));
    light.getScope().add(scope);
    return light;
  }

  @Override
  public void look(Camera c) {
    camera = c;
    if (c == null) {
      return;
    }
    double[] r = c.right();
    double[] u = c.up();
    double[] e = c.eye();
    double tx = c.targetX();
    double ty = c.targetY();
    double tz = c.targetZ();
    toView.setToTransform(
        r[0],
        r[1],
        r[2],
        -(r[0] * tx + r[1] * ty + r[2] * tz),
        -u[0],
        -u[1],
        -u[2],
        u[0] * tx + u[1] * ty + u[2] * tz,
        -e[0],
        -e[1],
        -e[2],
        e[0] * tx + e[1] * ty + e[2] * tz + c.distanceMm());
    double away =
        Math.sqrt(
            Math.pow(tx - middle.x(), 2)
                + Math.pow(ty - middle.y(), 2)
                + Math.pow(tz - middle.z(), 2));
    double reach = 1.02 * (radiusMm + away) + 1e-3;
    eye.setNearClip(Math.max(c.distanceMm() * 1e-3, c.distanceMm() - reach));
    eye.setFarClip(c.distanceMm() + reach);
    eye.setFieldOfView(c.viewDegrees());
  }

  @Override
  public void paint(int[] colours) {
    palette = colours.clone();
    colour();
  }

  private void colour() {
    WritableImage strip = new WritableImage(palette.length, 1);
    strip
        .getPixelWriter()
        .setPixels(
            0,
            0,
            palette.length,
            1,
            PixelFormat.getIntArgbInstance(),
            Arrays.stream(palette).map(c -> c | 0xFF000000).toArray(),
            0,
            palette.length);
    if (unlit) {
      material.setDiffuseMap(null);
      material.setDiffuseColor(Color.BLACK);
      material.setSelfIlluminationMap(strip);
    } else {
      material.setSelfIlluminationMap(null);
      material.setDiffuseColor(Color.WHITE);
      material.setDiffuseMap(strip);
    }
  }

  @Override
  public void style(boolean withoutLight, boolean withLines, int groundArgb, int lineArgb) {
    unlit = withoutLight;
    ground = colourOf(groundArgb);
    if (scene != null) {
      scene.setFill(ground);
    }
    WritableImage dot = new WritableImage(1, 1);
    dot.getPixelWriter().setArgb(0, 0, lineArgb);
    lineMaterial.setSelfIlluminationMap(dot);
    if (withLines != facets) {
      facets = withLines;
      lines.getChildren().clear();
      if (facets && attaching == null) {
        chunks.forEach(this::addLines);
      }
    }
    colour();
  }

  @Override
  public ReadOnlyBooleanProperty drawn() {
    return drawn.getReadOnlyProperty();
  }

  static Color colourOf(int argb) {
    return Color.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255);
  }
}
