package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Hold;
import java.time.ZoneId;

/** How a hold looks as JSON. */
final class HoldJson {
  private HoldJson() {}

  static ObjectNode of(Hold hold, ZoneId zone) {
    ObjectNode node =
        Wire.object()
            .put("id", hold.id())
            .put("kind", hold.kind().word())
            .put("line", hold.scope().line())
            .put("structure", hold.scope().structure().orElse(null))
            .put("deviation", hold.scope().deviation().map(Deviation::word).orElse(null))
            .put("since", Wire.time(hold.decision().at(), zone))
            .put("until", hold.until().map(end -> Wire.time(end, zone)).orElse(null))
            .put("by", hold.decision().author())
            .put("reason", hold.decision().reason());
    ArrayNode positions = node.putArray("positions");
    hold.scope().positions().stream().sorted().forEach(positions::add);
    return node;
  }
}
