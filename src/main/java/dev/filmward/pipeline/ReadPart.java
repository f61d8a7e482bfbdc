package dev.filmward.pipeline;

import dev.filmward.intake.FilePart;
import dev.filmward.intake.PartCount;
import dev.filmward.intake.PartReader;
import dev.filmward.intake.PlainHead;
import dev.filmward.intake.Rejection;
import dev.filmward.subgroup.SampleAssembler;
import dev.filmward.subgroup.SampleDraft;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What was read of one part of a file: samples summed up, but for the first and last ones, which
 * may go on in the part before or after. Used again for other parts of the file. One owner at a
 * time.
 */
final class ReadPart {
  /** As many samples as may be open at once. */
  private static final int FIRST = 64;

  private static final int MOST_REJECTIONS = 4096;

  private final Path file;
  private final PartReader reader;
  private final SampleAssembler assembler = new SampleAssembler(this::complete);
  private final SampleFigures inside;
  private final List<SampleDraft> first = new ArrayList<>();
  private final List<SampleDraft> stillOpen = new ArrayList<>();
  private final List<Rejection> rejections = new ArrayList<>();
  private Optional<PartCount> count = Optional.empty();

  ReadPart(Path file, PlainHead head, AnalysisScope scope) {
    this.file = file;
    this.reader = head.partReader();
    this.inside = new SampleFigures(scope);
  }

  /** Reads a part and keeps its rejections; where there are too many, gives up. */
  void read(FilePart part) throws IOException {
    try {
      read(part, this::keep);
    } catch (TooManyRejections e) {
      assembler.finish(draft -> {});
      count = Optional.empty();
    }
  }

  /** Reads a part and hands its rejections on as they come. */
  void read(FilePart part, Consumer<Rejection> receiver) throws IOException {
    clear();
    try (FileChannel channel = FileChannel.open(file)) {
      channel.position(part.opensAt());
      count = Optional.of(reader.read(Channels.newInputStream(channel), part, assembler, receiver));
    }
    assembler.finish(stillOpen::add);
  }

  /** Whether it was read from a place on, so that what was guessed before is right. */
  boolean isRight(FilePart truth) {
    return count.isPresent() && count.get().follows(truth);
  }

  /** Asked only where it was read to its end. */
  PartCount count() {
    return count.orElseThrow();
  }

  /**
   * The first samples of the part that are whole as far as it can tell, in the order of the file.
   */
  List<SampleDraft> first() {
    return first;
  }

  /** All other samples but those still open. */
  SampleFigures inside() {
    return inside;
  }

  /** The last samples, in the order of the file. */
  List<SampleDraft> stillOpen() {
    return stillOpen;
  }

  List<Rejection> rejections() {
    return rejections;
  }

  /** Takes a draft back that is needed no more. */
  void takeBack(SampleDraft draft) {
    assembler.takeBack(draft);
  }

  private void complete(SampleDraft draft) {
    if (draft.number() < FIRST) {
      first.add(draft);
    } else {
      inside.add(draft);
      assembler.takeBack(draft);
    }
  }

  private void keep(Rejection rejection) {
    if (rejections.size() == MOST_REJECTIONS) {
      throw new TooManyRejections();
    }
    rejections.add(rejection);
  }

  private void clear() {
    inside.clear();
    first.clear();
    stillOpen.clear();
    rejections.clear();
    count = Optional.empty();
  }

  /** Ends a part that had better be read by whoever hands rejections on. */
  private static final class TooManyRejections extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }
}
