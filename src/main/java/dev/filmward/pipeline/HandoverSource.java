package dev.filmward.pipeline;

import dev.filmward.pipeline.Handover.Item;
import java.util.List;

/** Fills one section of a handover. */
interface HandoverSource {
  List<Item> items(HandoverScope scope);
}
