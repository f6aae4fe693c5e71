package steadypull.advice;

import dev.cel.common.CelAbstractSyntaxTree;
import dev.cel.common.CelIssue;
import dev.cel.common.CelOptions;
import dev.cel.common.CelValidationException;
import dev.cel.common.CelValidationResult;
import dev.cel.common.types.SimpleType;
import dev.cel.compiler.CelCompiler;
import dev.cel.compiler.CelCompilerBuilder;
import dev.cel.compiler.CelCompilerFactory;
import dev.cel.runtime.CelEvaluationException;
import dev.cel.runtime.CelRuntime;
import dev.cel.runtime.CelRuntimeFactory;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.channel.NearMatch;

/**
 * Turns the text of a condition into a checked program. The language has no loops here (no macros
 * are installed) and the text is short, so that a judgement costs a bounded number of steps.
 */
final class ConditionCompiler {
  private static final int LONGEST_CONDITION = 2000;
  private static final Pattern UNDECLARED =
      Pattern.compile("undeclared reference to '([^']*)'.*", Pattern.DOTALL);
  private static final CelOptions OPTIONS =
      CelOptions.current()
          .enableHeterogeneousNumericComparisons(true)
          .maxExpressionCodePointSize(LONGEST_CONDITION)
          .build();

  private final List<String> names;
  private final CelCompiler compiler;
  private final CelRuntime runtime;

  /** A compiler that knows these variables and no others. */
  ConditionCompiler(List<RuleVariable> variables) {
    names = variables.stream().map(RuleVariable::id).toList();
    CelCompilerBuilder builder =
        CelCompilerFactory.standardCelCompilerBuilder().setOptions(OPTIONS);
    variables.forEach(each -> builder.addVar(each.id(), each.type()));
    compiler = builder.build();
    runtime = CelRuntimeFactory.plannerRuntimeBuilder().setOptions(OPTIONS).build();
  }

  /** What became of a text. A closed set. */
  sealed interface Outcome {
    /** It is well typed. */
    record Compiled(Condition condition) implements Outcome {}

    /** It is not. */
    record Refused(List<Fault> faults) implements Outcome {}
  }

  /**
   * One fault.
   *
   * @param line within the text, 1 is the first
   * @param column within the line, 0 is the first
   * @param message what is wrong
   */
  record Fault(int line, int column, String message) {}

  Outcome compile(String text) {
    CelValidationResult result = compiler.compile(text);
    if (result.hasError()) {
      return new Outcome.Refused(result.getErrors().stream().map(this::fault).toList());
    }
    try {
      return checked(result.getAst());
    } catch (CelValidationException | CelEvaluationException unexpected) {
      return refused(String.valueOf(unexpected.getMessage()));
    }
  }

  private Outcome checked(CelAbstractSyntaxTree tree) throws CelEvaluationException {
    if (!tree.getResultType().equals(SimpleType.BOOL)) {
      return refused("expected a condition that is true or false, found a " + typeName(tree));
    }
    return new Outcome.Compiled(new Condition(runtime.createProgram(tree)));
  }

  private static String typeName(CelAbstractSyntaxTree tree) {
    return tree.getResultType().name();
  }

  private static Outcome refused(String message) {
    return new Outcome.Refused(List.of(new Fault(1, 0, message)));
  }

  private Fault fault(CelIssue issue) {
    return new Fault(
        issue.getSourceLocation().getLine(),
        issue.getSourceLocation().getColumn(),
        plain(issue.getMessage()));
  }

  private String hint(String name) {
    String question = NearMatch.question(name, names);
    return question.isEmpty() ? " There are " + String.join(", ", names) + "." : question;
  }

  private String plain(String message) {
    Matcher undeclared = UNDECLARED.matcher(message);
    if (undeclared.matches()) {
      String name = undeclared.group(1);
      return "unknown name \"%s\".%s".formatted(name, hint(name));
    }
    int candidates = message.indexOf(" (candidates:");
    return candidates < 0 ? message : message.substring(0, candidates);
  }
}
