package dev.filmward.store;

import dev.filmward.gauge.calibration.ReferencePiece;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** The known pieces of gauge studies, as they were known when those were planned; only added. */
final class StudyPieceTable {
  private final Handle handle;

  StudyPieceTable(Handle handle) {
    this.handle = handle;
  }

  void add(long studyId, List<ReferencePiece> pieces) {
    for (int place = 0; place < pieces.size(); place++) {
      ReferencePiece piece = pieces.get(place);
      handle
          .createUpdate(
              "INSERT INTO gauge_study_piece (study_id, place, thickness_um, expanded_um, k,"
                  + " material, how_known) VALUES (:study, :place, :thickness, :expanded, :k,"
                  + " :material, :howKnown)")
          .bind("study", studyId)
          .bind("place", place)
          .bind("thickness", piece.thicknessUm())
          .bind("expanded", piece.expandedUm())
          .bind("k", piece.k())
          .bind("material", Nul.shown(piece.material()))
          .bind("howKnown", Nul.shown(piece.howKnown()))
          .execute();
    }
  }

  /**
   * @param names of the parts of the study, in their order
   */
  List<ReferencePiece> pieces(long studyId, List<String> names) {
    return handle
        .createQuery("SELECT * FROM gauge_study_piece WHERE study_id = :id ORDER BY place")
        .bind("id", studyId)
        .map(
            (row, context) ->
                new ReferencePiece(
                    names.get(row.getInt("place")),
                    row.getDouble("thickness_um"),
                    row.getDouble("expanded_um"),
                    row.getDouble("k"),
                    row.getString("material"),
                    row.getString("how_known")))
        .list();
  }
}
