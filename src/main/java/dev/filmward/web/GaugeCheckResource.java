package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Structure;
import dev.filmward.gauge.echo.Resin;
import dev.filmward.gauge.echo.Resins;
import dev.filmward.pipeline.FilmCheck;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;

/** What a gauge can see of a film, and what its readings of it are worth. Nothing is changed. */
final class GaugeCheckResource {
  private final Plant plant;
  private final FilmCheck check;

  GaugeCheckResource(Plant plant) {
    this.plant = plant;
    this.check = new FilmCheck(plant);
  }

  void check(Context ctx) {
    Structure structure = check.structure(GaugeCheckRequests.given(ctx, "structure"));
    ObjectNode answer = GaugeCheckJson.plan(check.check(structure, GaugeCheckRequests.setup(ctx)));
    ArrayNode structures = answer.putArray("structures");
    plant.structures().all().stream().map(GaugeCheckJson::named).forEach(structures::add);
    media(answer.putArray("couplants"), Resin.Use.LIQUID);
    media(answer.putArray("backings"), Resin.Use.BACKING, Resin.Use.LIQUID);
    ctx.json(answer);
  }

  void uncertainty(Context ctx) {
    Structure structure = check.structure(GaugeCheckRequests.given(ctx, "structure"));
    FilmCheck.Asked asked = GaugeCheckRequests.asked(ctx);
    ctx.json(BudgetJson.of(structure, asked, check.worth(structure, asked)));
  }

  private static void media(ArrayNode list, Resin.Use... uses) {
    for (Resin.Use use : uses) {
      Resins.builtIn().of(use).stream().map(GaugeCheckJson::medium).forEach(list::add);
    }
  }
}
