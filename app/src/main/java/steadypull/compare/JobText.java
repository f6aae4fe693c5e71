package steadypull.compare;

import java.util.Map;
import org.tomlj.Toml;

/** Writes a job as TOML. */
final class JobText {
  private JobText() {}

  static String of(Job job) {
    StringBuilder text = new StringBuilder();
    if (!job.name().isEmpty()) {
      line(text, "name", quoted(job.name()));
    }
    answers(text, job.both());
    side(text, "before", job.before());
    side(text, "after", job.after());
    for (Job.OfRun run : job.runs()) {
      text.append("\n[[run]]\n");
      line(text, JobReader.SOURCE, quoted(run.source()));
      run.atSeconds().ifPresent(at -> line(text, JobReader.AT, Double.toString(at)));
      run.probeCelsius().ifPresent(probe -> line(text, JobReader.PROBE, Double.toString(probe)));
      run.leftOut().ifPresent(reason -> line(text, JobReader.LEFT_OUT, quoted(reason)));
      answers(text, run.words());
    }
    return text.toString();
  }

  private static void side(StringBuilder text, String name, Map<Asked, String> answers) {
    if (!answers.isEmpty()) {
      text.append("\n[").append(name).append("]\n");
      answers(text, answers);
    }
  }

  private static void answers(StringBuilder text, Map<Asked, String> answers) {
    for (Asked asked : Asked.values()) {
      String answer = answers.get(asked);
      if (answer != null) {
        line(text, asked.id(), asked.isNumber() ? answer : quoted(answer));
      }
    }
  }

  private static void line(StringBuilder text, String key, String value) {
    text.append(key).append(" = ").append(value).append('\n');
  }

  private static String quoted(String text) {
    return '"' + Toml.tomlEscape(text).toString() + '"';
  }
}
