package sparewell.stow;

import java.util.Locale;

/** Writes a stowing problem as a CPLEX LP file, for solvers that are not part of the project. */
final class LpFile {
  private LpFile() {}

  /** The problem with at most {@code mostMoves} moved boxes (negative: any number). */
  static String of(StowProblem problem, int mostMoves) {
    StringBuilder text = new StringBuilder("Minimize\n obj:");
    for (int box = 0; box < problem.boxCount(); box++) {
      for (int at = 0; at < problem.placeCount(); at++) {
        if (problem.allowed(box, at)) {
          term(text, problem.cost()[box][at], box, at);
        }
      }
    }
    text.append("\nSubject To\n");
    for (int box = 0; box < problem.boxCount(); box++) {
      text.append(" one").append(box).append(':');
      for (int at = 0; at < problem.placeCount(); at++) {
        if (problem.allowed(box, at)) {
          term(text, 1, box, at);
        }
      }
      text.append(" = 1\n");
    }
    for (int at = 0; at < problem.placeCount(); at++) {
      row(text, problem, "load" + at, problem.weightMg(), at, problem.loadRoomMg()[at]);
      row(text, problem, "vol" + at, problem.volumeMm3(), at, problem.volumeRoomMm3()[at]);
    }
    StringBuilder side = new StringBuilder();
    for (int box = 0; box < problem.boxCount(); box++) {
      for (int at = 0; at < problem.placeCount(); at++) {
        if (problem.allowed(box, at) && problem.offsetUm()[at] != 0) {
          term(side, problem.weightMg()[box] * 1e-6 * (problem.offsetUm()[at] * 1e-6), box, at);
        }
      }
    }
    if (side.length() > 0) {
      text.append(" sideHigh:")
          .append(side)
          .append(" <= ")
          .append(number(problem.sideHighest() * 1e-12));
      text.append("\n sideLow:")
          .append(side)
          .append(" >= ")
          .append(number(problem.sideLowest() * 1e-12));
      text.append('\n');
    }
    if (mostMoves >= 0) {
      text.append(" moves:");
      int rest = problem.boxCount() - mostMoves;
      for (int box = 0; box < problem.boxCount(); box++) {
        if (problem.allowed(box, problem.now()[box])) {
          term(text, 1, box, problem.now()[box]);
        }
      }
      text.append(" >= ").append(rest).append('\n');
    }
    text.append("Binary\n");
    for (int box = 0; box < problem.boxCount(); box++) {
      for (int at = 0; at < problem.placeCount(); at++) {
        if (problem.allowed(box, at)) {
          text.append(' ').append(name(box, at)).append('\n');
        }
      }
    }
    return text.append("End\n").toString();
  }

  private static void row(
      StringBuilder text, StowProblem problem, String name, long[] use, int at, long room) {
    StringBuilder row = new StringBuilder();
    for (int box = 0; box < problem.boxCount(); box++) {
      if (problem.allowed(box, at) && use[box] > 0) {
        term(row, use[box] * 1e-6, box, at);
      }
    }
    if (row.length() > 0 && room < StowProblem.UNLIMITED / 2) {
      text.append(' ').append(name).append(':').append(row);
      text.append(" <= ").append(number(room * 1e-6)).append('\n');
    }
  }

  private static void term(StringBuilder text, double factor, int box, int at) {
    text.append(factor < 0 ? " - " : " + ").append(number(Math.abs(factor)));
    text.append(' ').append(name(box, at));
    if (text.length() - text.lastIndexOf("\n") > 200) {
      text.append("\n ");
    }
  }

  private static String name(int box, int at) {
    return "x" + box + "_" + at;
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.12g", value);
  }
}
