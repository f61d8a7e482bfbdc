package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Structure;
import dev.filmward.gauge.echo.EchoPlan;
import dev.filmward.gauge.echo.ExpectedEcho;
import dev.filmward.gauge.echo.ExpectedLayer;
import dev.filmward.gauge.echo.LayerSound;
import dev.filmward.gauge.echo.Medium;
import dev.filmward.gauge.echo.Reflection;
import dev.filmward.gauge.echo.Remark;
import dev.filmward.gauge.echo.Resin;
import dev.filmward.gauge.echo.Resolution;
import dev.filmward.gauge.echo.Setup;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** How expected echoes look as JSON. Stateless. */
final class GaugeCheckJson {
  private GaugeCheckJson() {}

  static ObjectNode plan(EchoPlan plan) {
    ObjectNode node = Wire.object();
    node.set("structure", named(plan.structure()));
    setup(node, plan.setup());
    node.put("guidance", EchoPlan.GUIDANCE).put("polarities", plan.polarities());
    ArrayNode layers = node.putArray("layers");
    plan.layers().stream().map(GaugeCheckJson::layer).forEach(layers::add);
    ArrayNode echoes = node.putArray("echoes");
    plan.echoes().stream().map(GaugeCheckJson::echo).forEach(echoes::add);
    ObjectNode proposal = node.putObject("proposal").put("changes", plan.hasProposal());
    ArrayNode reported = proposal.putArray("reported");
    plan.proposal().forEach(group -> names(reported.addArray(), group));
    ArrayNode remarks = node.putArray("remarks");
    plan.remarks().stream().map(GaugeCheckJson::remark).forEach(remarks::add);
    return node;
  }

  static ObjectNode named(Structure structure) {
    return Wire.object().put("code", structure.code()).put("name", structure.name());
  }

  static ObjectNode medium(Resin resin) {
    return Wire.object().put("key", resin.key()).put("name", resin.name());
  }

  private static void setup(ObjectNode node, Setup setup) {
    node.putObject("gauge")
        .put("frequencyMhz", setup.gauge().centreMhz())
        .put("bandwidth", setup.gauge().bandwidth());
    node.put("coupling", word(setup.coupling()));
    node.set("couplant", medium(setup.couplant()));
    node.set("backing", medium(setup.backing()));
  }

  private static ObjectNode layer(ExpectedLayer layer) {
    ObjectNode node =
        Wire.object().put("position", layer.layer().position()).put("name", layer.layer().name());
    Wire.number(node, "nominalUm", layer.nominalUm());
    Wire.number(node, "greatestUm", layer.gauged().greatestUm());
    Wire.number(node, "velocityMps", layer.gauged().velocityMps());
    Wire.number(node, "flightNs", layer.gauged().flightNs());
    number(node, "wavelengthUm", layer.sound(), ExpectedLayer.Sound::wavelengthUm);
    Optional<Resolution.Limits> limits = layer.sound().map(ExpectedLayer.Sound::limits);
    number(node, "pulseUm", limits, Resolution.Limits::pulseUm);
    number(node, "oneCycleUm", limits, Resolution.Limits::oneCycleUm);
    number(node, "resolvedFromUm", limits, Resolution.Limits::resolvedFromUm);
    number(node, "leastUm", limits, Resolution.Limits::leastUm);
    node.put("resolution", layer.sound().map(s -> s.resolution().words()).orElse(null));
    ArrayNode members = node.putArray("members");
    layer.members().stream().map(GaugeCheckJson::member).forEach(members::add);
    return node;
  }

  private static ObjectNode member(LayerSound sound) {
    ObjectNode node =
        Wire.object()
            .put("name", sound.layer().name())
            .put("role", sound.layer().role().name().toLowerCase(Locale.ROOT))
            .put("resin", sound.layer().resin().orElse(null));
    Wire.number(node, "nominalUm", sound.nominalUm());
    Wire.number(node, "velocityMps", sound.velocityMps());
    Wire.number(node, "densityKgm3", sound.densityKgm3());
    node.put("velocityOrigin", sound.velocityOrigin().words())
        .put("densityOrigin", sound.densityOrigin().words());
    number(node, "impedanceMrayl", sound.medium(), Medium::impedanceMrayl);
    return node.put("source", sound.family().map(Resin::source).orElse(null));
  }

  private static ObjectNode echo(ExpectedEcho echo) {
    ObjectNode node =
        Wire.object()
            .put("place", word(echo.place()))
            .put("before", echo.before())
            .put("behind", echo.behind())
            .put("after", echo.after())
            .put("polarity", echo.polarity().sign())
            .put("sight", echo.sight().words());
    number(node, "reflection", echo.reflection(), Reflection::coefficient);
    number(node, "transmission", echo.reflection(), Reflection::transmission);
    Wire.number(node, "decibels", echo.decibels());
    Wire.number(node, "strength", echo.strength());
    Wire.number(node, "strengthDb", echo.strengthDb());
    return node;
  }

  private static ObjectNode remark(Remark remark) {
    return Wire.object()
        .put("weight", word(remark.weight()))
        .put("place", remark.place())
        .put("words", remark.words());
  }

  private static void names(ArrayNode array, List<String> names) {
    names.forEach(array::add);
  }

  private static <T> void number(
      ObjectNode node, String name, Optional<T> from, Function<T, Double> number) {
    Wire.number(
        node, name, from.map(number).map(OptionalDouble::of).orElseGet(OptionalDouble::empty));
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
