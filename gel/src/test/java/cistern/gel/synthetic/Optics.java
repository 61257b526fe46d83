package cistern.gel.synthetic;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;

/** Illumination, blur, gamma, noise, JPEG, depth, inversion and lying on the side. */
final class Optics {
  private final Level level;
  private final Draw draw;
  private final int width;
  private final int height;

  Optics(Level level, Draw draw, int width, int height) {
    this.level = level;
    this.draw = draw;
    this.width = width;
    this.height = height;
  }

  SyntheticGel expose(
      float[] density, boolean[] outside, List<LaneTruth> lanes, List<PairTruth> pairs) {
    float[] light = light(density, outside);
    light = blur(light, draw.between(0.3, 1.0));
    grain(light);
    noise(light);
    boolean invert = draw.chance(0.25);
    if (invert) {
      for (int i = 0; i < light.length; i++) {
        light[i] = 1 - light[i];
      }
    }
    quantise(light);
    SyntheticGel.Truth truth = new SyntheticGel.Truth(lanes, pairs, invert, draw.chance(0.08));
    return truth.isAcross()
        ? new SyntheticGel(height, width, transpose(light), truth)
        : new SyntheticGel(width, height, light, truth);
  }

  private float[] light(float[] density, boolean[] outside) {
    double white = draw.between(0.75, 0.97);
    double slopeX = draw.between(-0.12, 0.12) * level.faults().share() * 2;
    double slopeY = draw.between(-0.12, 0.12) * level.faults().share() * 2;
    double vignette = draw.between(0, 0.2) * level.faults().share();
    double gamma = draw.between(0.8, 1.25);
    double around = draw.chance(0.5) ? draw.between(0.02, 0.3) : draw.between(0.9, 1.0);
    float[] light = new float[density.length];
    for (int y = 0; y < height; y++) {
      double v = 2.0 * y / height - 1;
      for (int x = 0; x < width; x++) {
        double u = 2.0 * x / width - 1;
        int i = y * width + x;
        double lamp = white * (1 + slopeX * u + slopeY * v - vignette * (u * u + v * v));
        double t = outside[i] ? around : lamp * Math.pow(10, -density[i]);
        light[i] = (float) Math.pow(Math.clamp(t, 0, 1), gamma);
      }
    }
    return light;
  }

  private float[] blur(float[] in, double sigma) {
    int reach = (int) Math.ceil(3 * sigma);
    float[] kernel = new float[2 * reach + 1];
    float sum = 0;
    for (int k = -reach; k <= reach; k++) {
      kernel[k + reach] = (float) Math.exp(-0.5 * k * k / (sigma * sigma));
      sum += kernel[k + reach];
    }
    float[] mid = new float[in.length];
    float[] out = new float[in.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        float s = 0;
        for (int k = -reach; k <= reach; k++) {
          s += kernel[k + reach] * in[y * width + Math.clamp(x + k, 0, width - 1)];
        }
        mid[y * width + x] = s / sum;
      }
    }
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        float s = 0;
        for (int k = -reach; k <= reach; k++) {
          s += kernel[k + reach] * mid[Math.clamp(y + k, 0, height - 1) * width + x];
        }
        out[y * width + x] = s / sum;
      }
    }
    return out;
  }

  /** Coarse grain: white noise blurred over a few pixels. */
  private void grain(float[] light) {
    float[] white = new float[light.length];
    for (int i = 0; i < white.length; i++) {
      white[i] = (float) draw.normal();
    }
    double sigma = draw.between(0.8, 2.0);
    float[] soft = blur(white, sigma);
    double scale = level.sensor().grain() * draw.between(0.3, 1) * 2 * Math.sqrt(Math.PI) * sigma;
    for (int i = 0; i < light.length; i++) {
      light[i] += (float) (scale * soft[i]);
    }
  }

  private void noise(float[] light) {
    double read = draw.between(level.sensor().noiseMin(), level.sensor().noiseMax());
    for (int i = 0; i < light.length; i++) {
      double shot = read * Math.sqrt(0.3 + Math.max(0, light[i]));
      light[i] = (float) Math.clamp(light[i] + shot * draw.normal(), 0, 1);
    }
  }

  private void quantise(float[] light) {
    double u = draw.between(0, 1);
    if (u < level.sensor().jpegShare()) {
      jpeg(light, draw.count(level.sensor().jpegMin(), 98));
    } else {
      double steps = u < (1 + level.sensor().jpegShare()) / 2 ? 255 : 65535;
      for (int i = 0; i < light.length; i++) {
        light[i] = (float) (Math.round(light[i] * steps) / steps);
      }
    }
  }

  private void jpeg(float[] light, int quality) {
    try {
      BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
      byte[] bytes = new byte[light.length];
      for (int i = 0; i < light.length; i++) {
        bytes[i] = (byte) Math.round(light[i] * 255);
      }
      image.getRaster().setDataElements(0, 0, width, height, bytes);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(quality / 100f);
      writer.setOutput(ImageIO.createImageOutputStream(out));
      writer.write(null, new IIOImage(image, null, null), param);
      writer.dispose();
      BufferedImage back = ImageIO.read(new ByteArrayInputStream(out.toByteArray()));
      int[] samples = back.getRaster().getSamples(0, 0, width, height, 0, (int[]) null);
      for (int i = 0; i < light.length; i++) {
        light[i] = samples[i] / 255f;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private float[] transpose(float[] in) {
    float[] out = new float[in.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        out[x * height + y] = in[y * width + x];
      }
    }
    return out;
  }
}
