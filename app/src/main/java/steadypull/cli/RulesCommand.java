package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.advice.RuleBook;
import steadypull.advice.RuleFolder;
import steadypull.advice.RuleSet;

/** Lists the rules in force, and where they can be changed. */
@Command(
    name = "rules",
    mixinStandardHelpOptions = true,
    header = "Lists the rules in force, and where they can be changed.",
    description = {
      "A file in the library's folder holds the rules that differ from the shipped ones, for every"
          + " vehicle, and another those of one vehicle. A rule of the same id takes the place of"
          + " the shipped one, others are added, and [[out_of_service]] takes a rule out. A faulty"
          + " file is told with line and column, and what it held before stays in force. Try a"
          + " change on recorded trips first: rehearse --rules FILE."
    })
final class RulesCommand implements Callable<Integer> {
  private static final ObjectMapper JSON = new ObjectMapper();

  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "The rules of that vehicle.")
  private @Nullable String vehicle;

  @Option(
      names = "--shipped",
      description = "Prints the shipped rule file, which explains all that a rule may say.")
  private boolean shipped;

  @Option(
      names = "--check",
      paramLabel = "FILE",
      converter = PlainText.Place.class,
      description = "Checks a file as changes to the rules in force; nothing is changed.")
  private @Nullable Path check;

  @Option(names = "--json", description = "Prints an array of objects for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    if (shipped) {
      main.out().print(RuleSet.shippedText());
      main.out().flush();
      return 0;
    }
    RuleBook book = RulesInForce.read(main, /* mayWrite= */ false);
    RuleSet inForce = vehicle == null ? book.common() : book.of(vehicle);
    if (check != null) {
      return checked(main, inForce, check);
    }
    List<RuleSet.Listed> rules = inForce.listed(RuleSet.shipped());
    main.out().print(json ? json(rules) + "\n" : text(main, rules));
    main.out().flush();
    return 0;
  }

  private static int checked(SteadypullCommand main, RuleSet inForce, Path file) throws Exception {
    RuleSet found = RuleSet.load(file);
    inForce.changedBy(file.toString(), found);
    int count = found.ids().size();
    main.out().printf("%s: %d %s, no fault%n", file, count, count == 1 ? "rule" : "rules");
    main.out().flush();
    return 0;
  }

  private String text(SteadypullCommand main, List<RuleSet.Listed> rules) {
    RuleFolder folder = RuleFolder.in(main.libraryFolder());
    StringBuilder text = new StringBuilder();
    text.append(place("every vehicle", folder.everyVehicle()));
    Optional.ofNullable(vehicle)
        .ifPresent(name -> text.append(place(name, folder.ofVehicle(name))));
    text.append('\n');
    rules.forEach(each -> text.append(line(each)));
    return text.toString();
  }

  private static String place(String who, Path file) {
    return "rules of %s: %s%s%n".formatted(who, file, Files.exists(file) ? "" : " (not there)");
  }

  private static String line(RuleSet.Listed rule) {
    String note =
        rule.outOfService().isEmpty()
            ? rule.isChanged() ? "  changed" : ""
            : "  out of service: " + rule.outOfService();
    return "%-8s %-28s %-15s%s"
            .formatted(rule.level(), rule.id(), rule.advise(), note)
            .stripTrailing()
        + "\n";
  }

  private static String json(List<RuleSet.Listed> rules) {
    ArrayNode all = JSON.createArrayNode();
    for (RuleSet.Listed rule : rules) {
      ObjectNode node = all.addObject();
      node.put("id", rule.id()).put("level", rule.level()).put("advise", rule.advise());
      node.put("changed", rule.isChanged());
      if (!rule.outOfService().isEmpty()) {
        node.put("out_of_service", rule.outOfService());
      }
    }
    return all.toString();
  }
}
