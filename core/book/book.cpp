#include "book/book.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "book/kit.h"
#include "frame/metric_sizes.h"

namespace bentbook {
namespace {

KnifePlate named(KnifePlate plate, std::string_view name) {
  plate.name = name;
  return plate;
}

/// Quarter-inch stock with one short row of pins: for girts and braces of a light building.
KnifePlate light_plate() {
  KnifePlate plate;
  plate.name = "Light plate 1/4";
  plate.thickness = Length::inches(1, 4);
  plate.reach = Length::inches(6);
  plate.width = Length::inches(4);
  plate.relief_leg = Length::inches(1, 4);
  plate.root_radius = Length::inches(3, 16);
  plate.base_thickness = Length::inches(3, 8);
  plate.base_width = Length::inches(4);
  plate.base_height = Length::inches(5);
  plate.pins.diameter = Length::inches(5, 8);
  plate.pins.spacing = Length::inches(5, 2);
  plate.pins.from_shoulder = Length::inches(9, 2);
  return plate;
}

/// Where machines and timbers begin, until the lead says otherwise: beside the building, the stack near the first bent
/// and within reach of what stands behind it. Common practice.
void lay_out_yard(RaisingPlan& plan, Length span, Length length, SizedBy by) {
  const bool metric = by == SizedBy::kMillimetres;
  const Length step = metric ? Length::mm(500) : Length::feet(1);
  const auto up = [&](Length value) { return Length{(value.count + step.count - 1) / step.count * step.count}; };
  const Length half{span.count / 2}, along = up({length.count / 2});
  if (metric) plan.truck = {Length::mm(7200), Weight::kilograms(4500)};
  plan.stack_x = -up(half + (metric ? Length::mm(2400) : Length::feet(8)));
  plan.stack_x = std::min(plan.stack_x, metric ? Length::mm(-6000) : Length::feet(-20));
  const Length beyond = up(half + (metric ? Length::mm(3500) : Length::feet(12)));
  for (Crane* machine : {&plan.crane, &plan.telehandler}) std::tie(machine->x, machine->y) = std::pair(-beyond, along);
  std::tie(plan.crane_two.x, plan.crane_two.y) = std::pair(beyond, along);
}

}  // namespace

const std::vector<Species>& common_species() {
  static const std::vector<Species> kSpecies = {
      {"Douglas-fir", .45, .48, 35.33},      {"Eastern white pine", .34, .35, 64.97},
      {"White oak", .60, .68, 68.27},        {"Northern red oak", .56, .63, 83.14},
      {"Eastern hemlock", .38, .40, 110.87}, {"Loblolly pine", .47, .51, 80.72},
      {"Red spruce", .37, .40, 47.27},       {"Tamarack", .49, .53, 53.71},
      {"Western redcedar", .31, .32, 39.58}, {"Black locust", .66, .69, 40.83},
  };
  return kSpecies;
}

Book new_book(std::string_view title, Length span, Length length, Length plate_height, Slope pitch, SizedBy by) {
  Book book;
  book.title = title;
  book.saws = first_kit().saws;
  book.species = common_species();
  if (by == SizedBy::kInches)
    book.joints = {{"Knife plate 3/8", named(KnifePlate{}, "Knife plate 3/8")}, {"Mortise and tenon", MortiseTenon{}}};
  else
    book.joints = {{"Knife plate 10", named(in_millimetres(KnifePlate{}), "Knife plate 10")},
                   {"Mortise and tenon", in_millimetres(JointType{MortiseTenon{}})}};
  book.frame = default_plan(span, length, plate_height, pitch, by);
  book.raising.fasten = FastenWhen::kWithStep;
  book.raising.spare = true;
  lay_out_yard(book.raising, span, length, by);
  if (by == SizedBy::kMillimetres) book.stock = metric_stock();
  return book;
}

const Saw& saw_of(const Book& book) {
  static const Saw kHand = [] {
    Saw s;
    s.kind = SawKind::kHand;
    return s;
  }();
  for (const Saw& saw : book.saws)
    if (saw.name == book.saw) return saw;
  return book.saws.empty() ? kHand : book.saws.front();
}

Book demo_book() {
  // A wash house by a camp ground: three bents, open to the east, one bay closed in later.
  Book book =
      new_book("Wash house", Length::feet(14), Length::feet(20), Length::feet(8), Slope::in_12(Length::inches(9)));
  book.notes = "Open on three sides. The middle bent carries the water pipe: no brace on its east post.";
  book.joints.push_back({"Light plate 1/4", light_plate()});
  FramePlan& plan = book.frame;
  plan.bays = {{Length::feet(9), 2}, {Length::feet(11), 3}};
  plan.species = common_species()[1];
  plan.moisture = 30;
  plan.girts = {Length::inches(42)};
  plan.sections.post = {Length::inches(7), Length::inches(7)};
  plan.sections.plate = {Length::inches(7), Length::inches(8)};
  plan.sections.tie = {Length::inches(7), Length::inches(9)};
  plan.eave_overhang = Length::inches(20);
  plan.joints[static_cast<std::size_t>(Meeting::kGirtPost)] = light_plate();
  return book;
}

}  // namespace bentbook
