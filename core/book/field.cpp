#include "book/field.h"

#include <string>
#include <utility>

#include "book/book_edit.h"
#include "frame/plan_fields.h"
#include "roof/rafter_fields.h"

namespace bentbook {
namespace {

constexpr std::string_view kOverrides = "frame.overrides.@", kAdded = "frame.added.@", kRafter = "rafter.",
                           kCrew = "raising.crew.";

/// A field of one timber's override: its mark (a plan's marks have no points) and the path inside.
struct Apart {
  std::string_view mark, inside;
};
std::optional<Apart> apart(std::string_view path) {
  if (!path.starts_with(kOverrides)) return std::nullopt;
  const std::string_view rest = path.substr(kOverrides.size());
  const std::size_t point = rest.find('.');
  if (point == std::string_view::npos) return std::nullopt;
  return Apart{rest.substr(0, point), rest.substr(point + 1)};
}

Result<Book> with_apart(Book book, const Apart& at, const FieldValue& value, const Frame* frame) {
  Override o = filled_override(book, at.mark, frame);
  const Override was = o;
  if (auto ok = set_field(described(o), at.inside, value); !ok) return tl::unexpected(ok.error());
  if (o == was) return book;
  o.has_section |= !(o.section == was.section);
  o.has_wood |= !(o.wood == was.wood);
  o.has_species |= !(o.species == was.species);
  o.has_joint_a |= !(o.joint_a == was.joint_a);
  o.has_joint_b |= !(o.joint_b == was.joint_b);
  return with_override(std::move(book), o);
}

void keep_whole(FramePlan& plan, std::string_view path) {
  for (HandTimber& timber : plan.added)
    if (path.starts_with(std::string(kAdded) + timber.mark + ".wood.nominal."))
      timber.wood.design = timber.wood.actual = timber.wood.nominal;
}

std::string in_rafter(const Places& places, std::string_view key) {
  return std::string(kRafter) + rafter_path(places.rafter, key);
}

void tell_rafter(RafterInput& input, std::string_view key, const FieldValue& value) {
  if (const Length* length = std::get_if<Length>(&value)) (void)set_rafter_length(input, key, *length);
  if (const Slope* slope = std::get_if<Slope>(&value))
    set_rafter_pitch(input, key.ends_with("_right") ? Side::kRight : Side::kLeft, *slope);
}

}  // namespace

std::optional<Field> field_at(const Book& book, std::string_view path, const Frame* frame) {
  const auto at = apart(path);
  if (!at) return find_field(described_as_is(book), path);
  return find_field(described_as_is(filled_override(book, at->mark, frame)), at->inside);
}

std::optional<Field> field_at(const Places& places, std::string_view path) {
  if (!path.starts_with(kRafter)) return find_field(described_as_is(places), path);
  return find_field(described_as_is(places), in_rafter(places, path.substr(kRafter.size())));
}

Result<Book> with_field(Book book, std::string_view path, const FieldValue& value, const Frame* frame) {
  if (const auto at = apart(path)) return with_apart(std::move(book), *at, value, frame);
  book.raising.crew.entered |= path.starts_with(kCrew);
  const auto now = find_field(described(book), path);
  if (now && now->value == value) return book;
  FramePlan& plan = book.frame;
  const Length plate = plan.plate_left, length = outside_length(plan);
  const Slope pitch = plan.pitch_left;
  const RoofForm form = plan.form;
  const bool bays_follow = !path.starts_with("frame.bays") && plan.bays == usual_bays(plan, length);
  if (auto ok = set_field(described(book), path, value); !ok) return tl::unexpected(ok.error());
  if (!(plan.plate_left == plate) && plan.plate_right == plate) plan.plate_right = plan.plate_left;
  if (!(plan.pitch_left == pitch) && plan.pitch_right == pitch) plan.pitch_right = plan.pitch_left;
  // Hips that nobody spoke of yet; and ends that had the sides' pitch, which keep to it while there is a gable again.
  const bool hip = plan.form == RoofForm::kHip, spoken = hip || !(plan.hips == HipEnds{});
  if (hip && form != RoofForm::kHip && plan.hips == HipEnds{}) plan.hips = usual_hips(plan);
  if (spoken && !(plan.pitch_left == pitch) && plan.hips.pitch == pitch) plan.hips.pitch = plan.pitch_left;
  // Bays that nobody set keep the posts under the peaks.
  if (bays_follow && (form == RoofForm::kHip || plan.form == RoofForm::kHip)) plan.bays = usual_bays(plan, length);
  keep_whole(plan, path);
  return book;
}

Result<Places> with_field(Places places, std::string_view path, const FieldValue& value) {
  const bool rafter = path.starts_with(kRafter);
  const std::string at = rafter ? in_rafter(places, path.substr(kRafter.size())) : std::string(path);
  if (auto ok = set_field(described(places), at, value); !ok) return tl::unexpected(ok.error());
  if (rafter) tell_rafter(places.rafter, path.substr(kRafter.size()), value);
  return places;
}

}  // namespace bentbook
