package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** What a parser gave, in order. Checks as it goes that a sample keeps its key object. */
final class Seen implements ReadingSink {
  static final ZoneId PLANT = ZoneId.of("Europe/Berlin");

  /** One call; {@code um} is NaN where nothing was measured. */
  record Place(
      SampleKey key, Instant takenAt, String structure, int position, int lane, double um) {}

  final List<Place> places = new ArrayList<>();

  /** Sample, lane and degrees. */
  final List<String> temperatures = new ArrayList<>();

  final List<Rejection> rejections = new ArrayList<>();

  /** Readings, missing and rejections, in the order in which they were given. */
  final List<Object> events = new ArrayList<>();

  FileCount count = new FileCount("", 0, 0, 0, 0, List.of());

  static Seen in(String csv) throws Exception {
    return in(csv.getBytes(StandardCharsets.UTF_8));
  }

  static Seen in(byte[] csv) throws Exception {
    return in(new ByteArrayInputStream(csv), Film.BOTH);
  }

  static Seen in(InputStream csv, Structures structures) throws IOException, FileRefused {
    Seen seen = new Seen();
    seen.count =
        new ReadingsParser(structures, PLANT).parse(csv, "readings.csv", seen, seen::rejected);
    return seen;
  }

  /** The only place. */
  Place place() {
    if (places.size() != 1 || !rejections.isEmpty()) {
      throw new AssertionError("not one place, but " + events);
    }
    return places.get(0);
  }

  /** The only rejection. */
  Rejection rejection() {
    if (rejections.size() != 1) {
      throw new AssertionError("not one rejection, but " + events);
    }
    return rejections.get(0);
  }

  List<Double> ums() {
    return places.stream().map(Place::um).toList();
  }

  @Override
  public void reading(
      SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um) {
    if (!(um > 0) || Double.isInfinite(um)) {
      throw new AssertionError("not a thickness: " + um);
    }
    add(new Place(key, takenAt, structure.code(), position, lane, um));
  }

  @Override
  public void temperature(SampleKey key, Instant takenAt, Structure structure, int lane, double c) {
    temperatures.add(key.sample() + " " + lane + " " + c);
  }

  @Override
  public void missing(SampleKey key, Instant takenAt, Structure structure, int position, int lane) {
    add(new Place(key, takenAt, structure.code(), position, lane, Double.NaN));
  }

  private void add(Place place) {
    if (!places.isEmpty()) {
      SampleKey before = places.get(places.size() - 1).key();
      if (before != place.key() && before.equals(place.key())) {
        throw new AssertionError("a second object for " + before);
      }
    }
    places.add(place);
    events.add(place);
  }

  private void rejected(Rejection rejection) {
    rejections.add(rejection);
    events.add(rejection);
  }
}
