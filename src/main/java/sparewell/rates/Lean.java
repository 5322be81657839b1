package sparewell.rates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import sparewell.experience.Club;
import sparewell.experience.Unit;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.RateFit;
import sparewell.rates.history.SeasonHistory;
import sparewell.rates.history.UsualShares;
import sparewell.season.Season;

/**
 * Sources that a season's rates lean on beside its own log.
 *
 * @param club what others say; absent where nobody else is known
 * @param history the season's; for a blank log with the others' usual shares of hours
 * @param covers of the log, then those of events ahead that others know
 * @param names as compared, where others are known
 * @param typical what others lose of each style; empty where nobody else is known
 * @param findings what is worth knowing of it
 */
record Lean(
    Optional<Club> club,
    SeasonHistory history,
    List<String> covers,
    BesideClub.Names names,
    List<Club.Typical> typical,
    List<Finding> findings) {
  Lean {
    covers = List.copyOf(covers);
    typical = List.copyOf(typical);
    findings = List.copyOf(findings);
  }

  static Lean on(Optional<Others> others, Season season, SeasonHistory history) {
    if (others.isEmpty()) {
      return alone(history, List.of());
    }
    Others known = others.get();
    boolean blank = history.uses().isEmpty();
    boolean afloat = !blank && history.usual().perHourAfloat();
    Optional<Club> club =
        Club.of(known.pool(), afloat ? Unit.PIECES_PER_HOUR_AFLOAT : Unit.PIECES_PER_HOUR_THROWN);
    if (club.isEmpty() && blank) {
      club = Club.of(known.pool(), Unit.PIECES_PER_HOUR_AFLOAT);
    }
    if (club.isEmpty()) {
      String hours = afloat ? "afloat" : "thrown";
      return alone(
          history,
          List.of(Finding.of(Code.EXPERIENCE_OF_NO_USE, Cell.NOWHERE, known.source(), hours)));
    }
    return beside(club.get(), known, season, history, blank);
  }

  private static Lean alone(SeasonHistory history, List<Finding> findings) {
    return new Lean(
        Optional.empty(),
        history,
        history.covers(),
        new BesideClub.Names(List.of(), List.of(), List.of()),
        List.of(),
        findings);
  }

  private static Lean beside(
      Club club, Others known, Season season, SeasonHistory history, boolean blank) {
    UnaryOperator<String> fold = known.fold();
    List<String> covers =
        Stream.concat(
                history.covers().stream(),
                season.events().stream()
                    .flatMap(event -> event.cover().stream())
                    .filter(cover -> club.cover(fold.apply(cover)).isPresent()))
            .distinct()
            .toList();
    BesideClub.Names names =
        new BesideClub.Names(
            history.styles().stream().map(fold).toList(),
            history.familyOfStyle().stream()
                .map(f -> fold.apply(history.families().get(f)))
                .toList(),
            covers.stream().map(fold).toList());
    List<Club.Typical> typical = new ArrayList<>();
    for (int s = 0; s < names.styles().size(); s++) {
      typical.add(club.style(names.styles().get(s), names.familyOfStyle().get(s)));
    }
    return new Lean(
        Optional.of(club),
        blank && club.unit() == Unit.PIECES_PER_HOUR_THROWN
            ? history.with(shares(club, history, fold))
            : history,
        covers,
        names,
        typical,
        List.of(
            Finding.of(
                Code.EXPERIENCE_USED,
                Cell.NOWHERE,
                known.source(),
                club.anglers() + (club.anglers() == 1 ? " other log" : " other logs"))));
  }

  /** The others' usual shares; a style that none of them has gets the mean, gear nothing. */
  private static UsualShares shares(Club club, SeasonHistory history, UnaryOperator<String> fold) {
    List<String> styles = history.styles();
    double mean =
        styles.stream()
            .flatMap(style -> club.share(fold.apply(style)).stream())
            .mapToDouble(Double::doubleValue)
            .average()
            .orElse(1);
    Map<String, Double> shares = new LinkedHashMap<>();
    for (String style : styles) {
      double without = history.usual().of(style) == 0 ? 0 : mean;
      shares.put(style, club.share(fold.apply(style)).orElse(without));
    }
    return new UsualShares(shares, Set.of(), false);
  }

  RateFit fit(FitInput input) {
    return club.map(known -> BesideClub.fit(input, known, names))
        .orElseGet(() -> RateFit.of(input));
  }
}
