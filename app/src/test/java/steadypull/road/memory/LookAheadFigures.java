package steadypull.road.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;

/**
 * What a look ahead said against what came, second by second: grades over 200 m that lie so far
 * ahead, as far as the look ahead was certain.
 */
final class LookAheadFigures {
  static final List<Integer> AHEAD_METRES = List.of(500, 1000, 2000, 5000);
  static final double WINDOW_METRES = 200;

  /** No error of a grade is that large after fusion: it was another road. */
  private static final double OTHER_ROAD = 0.015;

  private final List<Claim> claims = new ArrayList<>();
  private int seconds;
  private int known;
  private OptionalDouble recognisedMetres = OptionalDouble.empty();

  /**
   * Something that was told as certain.
   *
   * @param tourMetres where the vehicle was
   * @param aheadMetres where the window of 200 m ended, ahead of it
   * @param error claimed less true grade, a fraction
   */
  record Claim(double tourMetres, int aheadMetres, double error) {
    boolean isOfOtherRoad() {
      return Math.abs(error) > OTHER_ROAD;
    }
  }

  static LookAheadFigures of(TourPass pass, RoadSight sight) {
    LookAheadFigures figures = new LookAheadFigures();
    figures.add(pass, sight);
    return figures;
  }

  void add(TourPass pass, RoadSight sight) {
    pass.live(sight, second -> judge(pass, sight.ahead(), pass.metres(second)));
  }

  private void judge(TourPass pass, RoadAhead ahead, double here) {
    seconds++;
    if (!(ahead instanceof RoadAhead.Known road)) {
      return;
    }
    known++;
    if (recognisedMetres.isEmpty()) {
      recognisedMetres = OptionalDouble.of(here - pass.metres(0));
    }
    for (int metres : AHEAD_METRES) {
      if (road.certain().lengthMetres() >= metres && here + metres < pass.tour().length()) {
        double from = metres - WINDOW_METRES;
        double truth = pass.meanGrade(here + from, here + metres);
        claims.add(new Claim(here, metres, mean(road.certain(), from, metres) - truth));
      }
    }
  }

  /** Mean grade of a profile between two of its metres, whole pieces apart. */
  static double mean(GradeProfile profile, double from, double to) {
    int first = (int) Math.round(from / profile.pieceMetres());
    int end = (int) Math.round(to / profile.pieceMetres());
    double sum = 0;
    for (int piece = first; piece < end; piece++) {
      sum += profile.grade(piece);
    }
    return sum / (end - first);
  }

  List<Claim> claims() {
    return claims;
  }

  /** Driven until the road was recognised; empty if it never was. */
  OptionalDouble recognisedMetres() {
    return recognisedMetres;
  }

  double knownShare() {
    return (double) known / seconds;
  }

  long claimsOfOtherRoads() {
    return claims.stream().filter(Claim::isOfOtherRoad).count();
  }

  /**
   * Root mean square error of what was told so far ahead, in per cent of grade, other roads too.
   */
  double rmsPercent(int aheadMetres) {
    return Math.sqrt(
            claims.stream()
                .filter(claim -> claim.aheadMetres == aheadMetres)
                .mapToDouble(claim -> claim.error * claim.error)
                .average()
                .orElseThrow())
        * 100;
  }

  /** A row of the table in DEVELOPERS.md. */
  String row(String head) {
    StringBuilder row = new StringBuilder("| ").append(head);
    row.append(String.format(Locale.ROOT, " | %.0f", knownShare() * 100));
    for (int metres : AHEAD_METRES) {
      List<Claim> there = claims.stream().filter(claim -> claim.aheadMetres == metres).toList();
      double wrong = there.stream().filter(Claim::isOfOtherRoad).count();
      row.append(
          String.format(
              Locale.ROOT,
              " | %.2f | %.0f | %.1f",
              rmsPercent(metres),
              100.0 * there.size() / seconds,
              100 * wrong / there.size()));
    }
    return row.append(" |").toString();
  }
}
