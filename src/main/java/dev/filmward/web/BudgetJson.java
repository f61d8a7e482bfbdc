package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Structure;
import dev.filmward.gauge.conformity.GlobalRisk;
import dev.filmward.gauge.conformity.GuardedLimits;
import dev.filmward.gauge.share.GaugeShare;
import dev.filmward.gauge.uncertainty.Budget;
import dev.filmward.gauge.uncertainty.Component;
import dev.filmward.gauge.uncertainty.LayerBudget;
import dev.filmward.pipeline.FilmCheck;
import dev.filmward.pipeline.GaugeBesideChart;
import java.util.List;

/** How uncertainty budgets look as JSON. Stateless. */
final class BudgetJson {
  private BudgetJson() {}

  static ObjectNode of(Structure structure, FilmCheck.Asked asked, List<FilmCheck.Worth> worth) {
    ObjectNode node = Wire.object();
    node.set("structure", GaugeCheckJson.named(structure));
    node.put("rule", asked.rule().words()).put("line", asked.line().orElse(null));
    ArrayNode layers = node.putArray("layers");
    worth.stream().map(BudgetJson::layer).forEach(layers::add);
    return node;
  }

  private static ObjectNode layer(FilmCheck.Worth worth) {
    LayerBudget of = worth.budget();
    ObjectNode node =
        Wire.object()
            .put("position", of.layer().layer().position())
            .put("name", of.layer().layer().name());
    Wire.number(node, "nominalUm", of.layer().nominalUm());
    Wire.number(node, "velocityMps", of.layer().velocityMps());
    node.put("basis", of.basis()).put("question", of.question());
    node.set("spec", Wire.spec(of.layer().layer().individual()));
    node.set("budget", of.budget().map(BudgetJson::budget).orElse(null));
    node.set("limits", worth.limits().map(BudgetJson::limits).orElse(null));
    node.set("beside", worth.beside().map(BudgetJson::beside).orElse(null));
    return node;
  }

  private static ObjectNode budget(Budget budget) {
    ObjectNode node = Wire.object();
    ArrayNode components = node.putArray("components");
    for (Component component : budget.components()) {
      components
          .addObject()
          .put("name", component.name())
          .put("unit", component.unit())
          .put("standard", component.input().standard())
          .put("sensitivity", component.sensitivity())
          .put("contributionUm", component.contribution())
          .put("share", budget.share(component));
    }
    node.put("combinedUm", budget.combined());
    double degrees = budget.effectiveDegrees();
    node.put("degrees", Double.isInfinite(degrees) ? null : (Double) degrees);
    return node.put("factor", budget.factor()).put("expandedUm", budget.expanded());
  }

  private static ObjectNode limits(GuardedLimits limits) {
    ObjectNode node = Wire.object().put("guardUm", limits.guard());
    Wire.number(node, "acceptFrom", limits.acceptFrom());
    Wire.number(node, "acceptUpTo", limits.acceptUpTo());
    return node.put("leavesRoom", limits.leavesRoom());
  }

  private static ObjectNode beside(GaugeBesideChart beside) {
    ObjectNode node = Wire.object();
    Wire.number(node, "ofReadings", beside.share().ofReadings());
    Wire.number(node, "ofMeans", beside.share().ofMeans());
    node.put("fits", beside.share().plausibility() == GaugeShare.Plausibility.FITS);
    Wire.number(node, "observedCp", beside.observedCp());
    Wire.number(node, "trueCp", beside.trueCp());
    node.set("risk", beside.risk().map(BudgetJson::risk).orElse(null));
    return node;
  }

  private static ObjectNode risk(GlobalRisk risk) {
    return Wire.object().put("consumer", risk.consumer()).put("producer", risk.producer());
  }
}
