package steadypull.ui;

import java.util.List;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import steadypull.drive.PortChoice;

/** Where a drive begins: vehicle, adapter, cautions, and one large button. FX thread only. */
final class StartScreen implements Screen {
  private final Words words;
  private final StartModel model;
  private final Pane root;
  private final VBox vehicles = list();
  private final VBox ports = list();
  private final TextField newVehicle = new TextField();
  private final Text portNote = TextRow.text("prose");
  private final Text trouble = TextRow.text("trouble");
  private final PressButton drive;

  /**
   * Builds the screen.
   *
   * @param lookAgain looks for ports again
   * @param begin begins the chosen drive
   */
  StartScreen(Words words, StartModel model, Runnable lookAgain, Runnable begin) {
    this.words = words;
    this.model = model;
    this.root = Parked.page(words.say("start.title"), words.say("start.subtitle"));
    this.drive = new PressButton(Icon.NONE, words.say("start.drive"), begin).solid();
    drive.getStyleClass().add("large");
    drive.setId("drive");
    drive.setDefaultButton(true);
    buildVehicles();
    buildPorts(lookAgain);
    buildBefore();
    model.factsProperty().addListener((_, _, facts) -> showFacts(facts));
    model.choiceProperty().addListener((_, _, choice) -> showChoice(choice));
    model.stageProperty().addListener((_, _, stage) -> showStage(stage));
    showFacts(model.factsProperty().get());
    showChoice(model.choiceProperty().get());
    showStage(model.stageProperty().get());
  }

  @Override
  public Pane root() {
    return root;
  }

  private void buildVehicles() {
    step("1", words.say("start.vehicle"), ParkedGeometry.LEFT);
    newVehicle.getStyleClass().add("entry");
    newVehicle.setId("new-vehicle");
    newVehicle.setPromptText(words.say("start.newVehicle"));
    newVehicle.setAccessibleText(words.say("start.newVehicle"));
    newVehicle
        .textProperty()
        .addListener(
            (_, _, name) -> {
              if (!name.isBlank()) {
                model.chooseVehicle(name);
              }
            });
    newVehicle.setManaged(false);
    newVehicle.resizeRelocate(
        ParkedGeometry.LEFT,
        ParkedGeometry.LIST_TOP,
        ParkedGeometry.COLUMN_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
    double listTop = ParkedGeometry.LIST_TOP + ParkedGeometry.ROW_HEIGHT + ParkedGeometry.ROW_GAP;
    VBox note =
        Parked.prose(
            List.of(words.say("start.limits")),
            ParkedGeometry.LEFT,
            footTop(),
            ParkedGeometry.COLUMN_WIDTH);
    root.getChildren().addAll(newVehicle, scroll(vehicles, ParkedGeometry.LEFT, listTop), note);
  }

  private void buildPorts(Runnable lookAgain) {
    step("2", words.say("start.port"), ParkedGeometry.PORT_LEFT);
    PressButton look = new PressButton(Icon.NONE, words.say("start.look"), lookAgain);
    look.setId("look-again");
    look.place(
        ParkedGeometry.PORT_LEFT,
        footTop(),
        ParkedGeometry.COLUMN_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
    portNote.setWrappingWidth(ParkedGeometry.COLUMN_WIDTH);
    root.getChildren()
        .addAll(scroll(ports, ParkedGeometry.PORT_LEFT, ParkedGeometry.LIST_TOP), look);
  }

  private void buildBefore() {
    step("3", words.say("start.before"), ParkedGeometry.BEFORE_LEFT);
    double width = ParkedGeometry.RIGHT - ParkedGeometry.BEFORE_LEFT;
    double inner = width - 2 * ParkedGeometry.BEFORE_PAD;
    double top = ParkedGeometry.LIST_TOP;
    double driveTop = ParkedGeometry.BOTTOM - ParkedGeometry.DRIVE_HEIGHT;
    double panelHeight = driveTop - ParkedGeometry.ROW_GAP - top;
    VBox prose =
        Parked.prose(
            Cautions.before(words),
            ParkedGeometry.BEFORE_LEFT + ParkedGeometry.BEFORE_PAD,
            ParkedGeometry.PROSE_TOP,
            inner,
            "caution-text");
    trouble.setWrappingWidth(inner);
    prose.getChildren().add(trouble);
    drive.place(ParkedGeometry.BEFORE_LEFT, driveTop, width, ParkedGeometry.DRIVE_HEIGHT);
    root.getChildren()
        .addAll(Parked.panel(ParkedGeometry.BEFORE_LEFT, top, width, panelHeight), prose, drive);
  }

  private void step(String number, String title, double x) {
    root.getChildren()
        .addAll(
            Parked.line(number, x, ParkedGeometry.STEP_BASELINE, "step"),
            Parked.line(
                title,
                x + ParkedGeometry.STEP_TITLE_INDENT,
                ParkedGeometry.STEP_BASELINE,
                "step-title"));
  }

  private static VBox list() {
    return new VBox(ParkedGeometry.ROW_GAP);
  }

  private static double footTop() {
    return ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT;
  }

  private static ScrollPane scroll(VBox rows, double x, double top) {
    ScrollPane scroll = new ScrollPane(rows);
    scroll.getStyleClass().add("list");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setManaged(false);
    scroll.resizeRelocate(
        x, top, ParkedGeometry.COLUMN_WIDTH, footTop() - ParkedGeometry.ROW_GAP - top);
    return scroll;
  }

  private void showFacts(StartModel.Facts facts) {
    ToggleGroup vehicleGroup = new ToggleGroup();
    vehicles.getChildren().clear();
    facts.vehicles().forEach(name -> addVehicle(name, vehicleGroup));
    ToggleGroup portGroup = new ToggleGroup();
    ports.getChildren().clear();
    facts.ports().forEach(port -> addPort(port, portGroup));
    if (facts.isLooking() || facts.ports().isEmpty()) {
      portNote.setText(words.say(facts.isLooking() ? "start.looking" : "start.noPorts"));
      ports.getChildren().add(portNote);
    }
    showChoice(model.choiceProperty().get());
  }

  private void addVehicle(String name, ToggleGroup group) {
    ChoiceRow row = new ChoiceRow(name, "");
    row.setUserData(name);
    row.setOnAction(_ -> chooseVehicle(name));
    add(row, vehicles, group);
  }

  private void chooseVehicle(String name) {
    newVehicle.clear();
    model.chooseVehicle(name);
    showChoice(model.choiceProperty().get());
  }

  private void addPort(PortChoice port, ToggleGroup group) {
    String simulated = port.simulated() ? words.say("start.simulated") : "";
    String separator = simulated.isEmpty() || port.detail().isEmpty() ? "" : " ";
    ChoiceRow row = new ChoiceRow(port.title(), simulated + separator + port.detail());
    if (port.simulated()) {
      row.markSimulated();
    }
    row.setUserData(port);
    row.setOnAction(_ -> choosePort(port));
    add(row, ports, group);
  }

  private void choosePort(PortChoice port) {
    model.choosePort(port);
    showChoice(model.choiceProperty().get());
  }

  private static void add(ChoiceRow row, VBox rows, ToggleGroup group) {
    row.setToggleGroup(group);
    rows.getChildren().add(row);
  }

  private void showChoice(StartModel.Choice choice) {
    select(vehicles, choice.vehicle());
    choice.port().ifPresent(port -> select(ports, port));
    boolean isKnown = model.factsProperty().get().vehicles().contains(choice.vehicle());
    if (!isKnown && newVehicle.getText().isBlank()) {
      newVehicle.setText(choice.vehicle());
    }
    showDrive();
  }

  private static void select(VBox rows, Object chosen) {
    for (var node : rows.getChildren()) {
      if (node instanceof ChoiceRow row) {
        row.setSelected(chosen.equals(row.getUserData()));
      }
    }
  }

  private void showStage(StartModel.Stage stage) {
    trouble.setText(
        switch (stage) {
          case StartModel.Stage.Asking _, StartModel.Stage.Opening _ -> "";
          case StartModel.Stage.Refused refused -> refused.message();
        });
    showDrive();
  }

  private void showDrive() {
    boolean isOpening = model.stageProperty().get() instanceof StartModel.Stage.Opening;
    drive.show(Icon.NONE, words.say(isOpening ? "start.opening" : "start.drive"));
    drive.setDisable(isOpening || !model.choiceProperty().get().isComplete());
  }
}
