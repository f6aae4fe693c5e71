package steadypull.advice;

import java.util.HashMap;
import java.util.Map;

/**
 * The rules in force, for every vehicle and with what is changed for some. Immutable.
 *
 * @param common rules of every vehicle without rules of its own
 * @param ofVehicles whole sets of rules by a vehicle's name
 */
public record RuleBook(RuleSet common, Map<String, RuleSet> ofVehicles) {
  public RuleBook {
    ofVehicles = Map.copyOf(ofVehicles);
  }

  /** The same rules for every vehicle. */
  public static RuleBook of(RuleSet rules) {
    return new RuleBook(rules, Map.of());
  }

  /** The rules of a vehicle. */
  public RuleSet of(String vehicleName) {
    return ofVehicles.getOrDefault(vehicleName, common);
  }

  /** The rules with more changes, for every vehicle alike; see {@link RuleSet#changedBy}. */
  public RuleBook changedBy(String name, RuleSet changes) throws RuleFileException {
    Map<String, RuleSet> changed = new HashMap<>();
    for (Map.Entry<String, RuleSet> each : ofVehicles.entrySet()) {
      changed.put(each.getKey(), each.getValue().changedBy(name, changes));
    }
    return new RuleBook(common.changedBy(name, changes), changed);
  }
}
