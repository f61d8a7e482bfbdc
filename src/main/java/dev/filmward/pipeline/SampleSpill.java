package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.subgroup.SampleDraft;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiConsumer;

/**
 * Brings together samples whose parts lie anywhere in the files: writes the parts into temporary
 * files by a hash of the sample's key, then joins them one temporary file at a time. Needs memory
 * for {@code 1 / }{@value #PARTITIONS} of the readings. For one thread.
 */
final class SampleSpill implements AutoCloseable {
  private static final int PARTITIONS = 64;
  private static final int BUFFER = 1 << 14;

  private final Structures structures;
  private final Path folder;
  private final DataOutputStream[] partitions = new DataOutputStream[PARTITIONS];

  SampleSpill(Structures structures) throws IOException {
    this.structures = structures;
    this.folder = Files.createTempDirectory("filmward-analyse");
    for (int i = 0; i < PARTITIONS; i++) {
      partitions[i] =
          new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file(i)), BUFFER));
    }
  }

  /** Takes a part of a sample; of two values for one place the one given later stands. */
  void add(SampleDraft part) {
    int partition = Math.floorMod(part.key().hashCode() * 0x9E3779B9, PARTITIONS);
    try {
      write(partitions[partition], part.toSample());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Gives every sample whole, in no particular order. */
  void forEach(BiConsumer<Sample, Structure> receiver) throws IOException {
    for (int i = 0; i < PARTITIONS; i++) {
      partitions[i].close();
      for (Sample sample : join(file(i)).values()) {
        structures
            .find(sample.key().structure())
            .ifPresent(structure -> receiver.accept(sample, structure));
      }
      Files.delete(file(i));
    }
  }

  @Override
  public void close() throws IOException {
    for (int i = 0; i < PARTITIONS; i++) {
      partitions[i].close();
      Files.deleteIfExists(file(i));
    }
    Files.deleteIfExists(folder);
  }

  private Path file(int partition) {
    return folder.resolve("part-" + partition);
  }

  private static void write(DataOutputStream out, Sample sample) throws IOException {
    SampleKey key = sample.key();
    out.writeUTF(key.line());
    out.writeUTF(key.structure());
    out.writeUTF(key.roll());
    out.writeUTF(key.sample());
    out.writeUTF(sample.takenAt().toString());
    out.writeInt(sample.layers());
    out.writeInt(sample.laneCount());
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      out.writeInt(sample.lane(lane));
      for (int position = 1; position <= sample.layers(); position++) {
        boolean measured = sample.isMeasured(position, lane);
        out.writeDouble(measured ? sample.thicknessUm(position, lane) : Double.NaN);
      }
    }
  }

  private static Map<SampleKey, Sample> join(Path file) throws IOException {
    Map<SampleKey, Sample> whole = new LinkedHashMap<>();
    try (DataInputStream in =
        new DataInputStream(new BufferedInputStream(Files.newInputStream(file), BUFFER))) {
      while (true) {
        Sample part = read(in);
        whole.merge(part.key(), part, (kept, came) -> new SampleMerge(kept, came).merged());
      }
    } catch (EOFException end) {
      return whole;
    }
  }

  private static Sample read(DataInputStream in) throws IOException {
    SampleKey key = new SampleKey(in.readUTF(), in.readUTF(), in.readUTF(), in.readUTF());
    Instant takenAt = Instant.parse(in.readUTF());
    double[][] um = new double[in.readInt()][];
    int[] lanes = new int[in.readInt()];
    for (int layer = 0; layer < um.length; layer++) {
      um[layer] = new double[lanes.length];
    }
    for (int lane = 0; lane < lanes.length; lane++) {
      lanes[lane] = in.readInt();
      for (double[] layer : um) {
        layer[lane] = in.readDouble();
      }
    }
    return new Sample(key, takenAt, lanes, um);
  }
}
