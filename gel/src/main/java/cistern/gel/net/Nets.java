package cistern.gel.net;

import ai.onnxruntime.OnnxTensor;
import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtException;
import ai.onnxruntime.OrtSession;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.FloatBuffer;
import java.util.Map;

/**
 * The trained nets, started when the first picture is read and kept for all further ones. One
 * thread works: the same picture gives the same answer on every run.
 */
public final class Nets {
  private final OrtEnvironment environment;
  private final OrtSession lane;
  private final OrtSession strip;

  private Nets() {
    this.environment = NetRuntime.started();
    this.lane = session("lane.onnx");
    this.strip = session("strip.onnx");
  }

  private static final class Started {
    private static final Nets NETS = new Nets();
  }

  /** The nets of this process. */
  public static Nets started() {
    return Started.NETS;
  }

  private OrtSession session(String name) {
    try (OrtSession.SessionOptions options = new OrtSession.SessionOptions();
        InputStream weights = Nets.class.getResourceAsStream(name)) {
      if (weights == null) {
        throw new IllegalStateException("the net " + name + " is missing");
      }
      options.setIntraOpNumThreads(1);
      options.setInterOpNumThreads(1);
      options.setExecutionMode(OrtSession.SessionOptions.ExecutionMode.SEQUENTIAL);
      options.setCPUArenaAllocator(false);
      return environment.createSession(weights.readAllBytes(), options);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (OrtException e) {
      throw fault(e);
    }
  }

  private static IllegalStateException fault(OrtException e) {
    return new IllegalStateException("a net could not be run: " + e.getMessage(), e);
  }

  /** What LaneNet says of a picture. */
  LaneMaps lanes(float[] picture, int width, int height) {
    try (OnnxTensor x = tensor(picture, 1, 1, height, width);
        OrtSession.Result said = lane.run(Map.of("x", x))) {
      float[] maps = floats(said, 0);
      int size = maps.length / 2;
      float[] core = new float[size];
      float[] middle = new float[size];
      System.arraycopy(maps, 0, core, 0, size);
      System.arraycopy(maps, size, middle, 0, size);
      return new LaneMaps(width / 2, height / 2, core, middle);
    } catch (OrtException e) {
      throw fault(e);
    }
  }

  /** What StripNet says of the two lanes of a pair, each rows × columns. */
  public PairMaps pair(float[] strips) {
    try (OnnxTensor x = tensor(strips, 1, 2, PairMaps.ROWS, PairMaps.COLUMNS);
        OrtSession.Result said = strip.run(Map.of("x", x))) {
      return new PairMaps(floats(said, 0), floats(said, 1), floats(said, 2), floats(said, 3)[0]);
    } catch (OrtException e) {
      throw fault(e);
    }
  }

  private OnnxTensor tensor(float[] values, long... shape) throws OrtException {
    return OnnxTensor.createTensor(environment, FloatBuffer.wrap(values), shape);
  }

  private static float[] floats(OrtSession.Result said, int output) {
    FloatBuffer buffer = ((OnnxTensor) said.get(output)).getFloatBuffer();
    float[] values = new float[buffer.remaining()];
    buffer.get(values);
    return values;
  }
}
