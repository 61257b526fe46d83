package cistern.gel.bands;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;

/**
 * What the scripts {@code scipy_gel.py} and {@code skimage_gel.py} in {@code gel/src/test/python}
 * wrote, and the profile that they started from.
 */
public final class SciPyNumbers {
  private SciPyNumbers() {}

  /** SciPy's numbers of one line, by its name. */
  public static double[] read(String name) throws IOException {
    return read("scipy.tsv", name);
  }

  /** The same of scikit-image. */
  public static double[] readOfImages(String name) throws IOException {
    return read("skimage.tsv", name);
  }

  private static double[] read(String file, String name) throws IOException {
    InputStream in = Objects.requireNonNull(SciPyNumbers.class.getResourceAsStream(file), file);
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> line.startsWith(name + "\t"))
          .flatMap(line -> Arrays.stream(line.split("\t", -1)).skip(1))
          .mapToDouble(Double::parseDouble)
          .toArray();
    }
  }

  /** 120 rows with a wave and one band: {@code profile()} of the script. */
  public static float[] profile() {
    float[] profile = new float[120];
    for (int y = 0; y < profile.length; y++) {
      double t = (y - 60) / 3.0;
      profile[y] = (float) (0.2 + 0.1 * Math.sin(y / 7.0) + 0.5 * Math.exp(-0.5 * t * t));
    }
    return profile;
  }

  /** The largest difference between two rows of numbers of one length. */
  public static double deviation(float[] got, double[] expected) {
    double most = got.length == expected.length ? 0 : Double.MAX_VALUE;
    for (int i = 0; i < Math.min(got.length, expected.length); i++) {
      most = Math.max(most, Math.abs(got[i] - expected[i]));
    }
    return most;
  }
}
