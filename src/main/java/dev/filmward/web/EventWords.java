package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.PlantEvent;
import dev.filmward.pipeline.PlantEvent.AlarmChanged;
import dev.filmward.pipeline.PlantEvent.FileCame;
import dev.filmward.pipeline.PlantEvent.LimitsFrozen;
import dev.filmward.pipeline.PlantEvent.LineModeSaid;
import dev.filmward.pipeline.PlantEvent.SampleCame;
import java.time.ZoneId;

/** How events of the plant look on the wire. */
final class EventWords {
  private EventWords() {}

  static EventStream.Event of(PlantEvent event, long sequence, String id, ZoneId zone) {
    ObjectNode data = Wire.object();
    String name = "sample";
    if (event instanceof SampleCame came) {
      data.put("line", came.key().line())
          .put("structure", came.key().structure())
          .put("roll", came.key().roll())
          .put("sample", came.key().sample())
          .put("takenAt", Wire.time(came.takenAt(), zone));
    } else if (event instanceof AlarmChanged changed) {
      name = "alarm";
      data.put("id", changed.id()).put("line", changed.line()).put("state", changed.state());
    } else if (event instanceof LimitsFrozen frozen) {
      name = "limits";
      data.put("line", frozen.line()).put("structure", frozen.structure());
    } else if (event instanceof LineModeSaid said) {
      name = "line";
      data.put("line", said.line()).put("mode", said.mode());
    } else if (event instanceof FileCame file) {
      name = "file";
      data.put("id", file.id()).put("name", file.name());
    }
    return new EventStream.Event(sequence, id, name, data.toString());
  }
}
