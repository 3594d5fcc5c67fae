// Cutting the glyphs a document uses out of a face.
//
// Only what a PDF reader draws with stays: no layout tables (shaping is done), no character map
// (the glyphs are addressed by number), no hints (half the size; ISO 32000-1, 9.9, asks for none of
// them). Glyphs are renumbered, so the subset is small. Test: tests/type/fonts_test.cpp.
#include <hb-ot.h>

#include <set>

#include "type/face_data.h"

namespace chalkleaf::type {
namespace {

using HbInput = std::unique_ptr<hb_subset_input_t, HbEnd<hb_subset_input_destroy>>;
using HbPlan = std::unique_ptr<hb_subset_plan_t, HbEnd<hb_subset_plan_destroy>>;

// Preparing a face takes about 4 ms and saves about 60 to 250 us a subset, so it pays after this
// many.
constexpr int kSubsetsBeforePreparing = 30;

constexpr std::array kUnneededTables{
    HB_TAG('G', 'S', 'U', 'B'), HB_TAG('G', 'P', 'O', 'S'), HB_TAG('G', 'D', 'E', 'F'),
    HB_TAG('B', 'A', 'S', 'E'), HB_TAG('J', 'S', 'T', 'F'), HB_TAG('M', 'A', 'T', 'H'),
    HB_TAG('k', 'e', 'r', 'n'), HB_TAG('c', 'm', 'a', 'p'), HB_TAG('n', 'a', 'm', 'e'),
    HB_TAG('p', 'o', 's', 't'), HB_TAG('O', 'S', '/', '2'), HB_TAG('S', 'T', 'A', 'T'),
    HB_TAG('D', 'S', 'I', 'G'), HB_TAG('g', 'a', 's', 'p'), HB_TAG('h', 'd', 'm', 'x'),
    HB_TAG('L', 'T', 'S', 'H'), HB_TAG('V', 'D', 'M', 'X'), HB_TAG('P', 'C', 'L', 'T'),
    HB_TAG('v', 'h', 'e', 'a'), HB_TAG('v', 'm', 't', 'x'), HB_TAG('m', 'e', 't', 'a'),
    HB_TAG('V', 'O', 'R', 'G'), HB_TAG('F', 'F', 'T', 'M'),
};

// Letters, figures in both manners, what stands between them, and the ligatures of either.
std::vector<std::uint16_t> common_glyphs(hb_font_t* font) {
  constexpr std::string_view kText =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZ abcdefghijklmnopqrstuvwxyz 0123456789 fi fl ff ffi ffl "
      "tt ti tti ft fft "
      ".,:;!?()/-+&% \u2018 \u2019 \u201C \u201D \u2013 \u00D7 \u00B7 \u00BD \u00A0 \u2002";
  const hb_feature_t tabular{HB_TAG('t', 'n', 'u', 'm'), 1, HB_FEATURE_GLOBAL_START,
                             HB_FEATURE_GLOBAL_END};
  std::set<std::uint16_t> found;
  for (const unsigned features : {0U, 1U}) {
    const HbBuffer buffer(hb_buffer_create());
    hb_buffer_add_utf8(buffer.get(), kText.data(), static_cast<int>(kText.size()), 0, -1);
    hb_buffer_guess_segment_properties(buffer.get());
    hb_shape(font, buffer.get(), &tabular, features);
    unsigned count = 0;
    const hb_glyph_info_t* glyphs = hb_buffer_get_glyph_infos(buffer.get(), &count);
    for (unsigned i = 0; i < count; ++i) {
      if (glyphs[i].codepoint != 0 && glyphs[i].codepoint <= 0xFFFF)
        found.insert(static_cast<std::uint16_t>(glyphs[i].codepoint));
    }
  }
  return {found.begin(), found.end()};
}

HbInput make_input(hb_face_t* face, const std::vector<std::uint16_t>& glyphs, Outlines outlines) {
  HbInput input(hb_subset_input_create_or_fail());
  if (!input) return input;
  hb_set_t* kept = hb_subset_input_glyph_set(input.get());
  hb_set_add(kept, 0);
  for (const std::uint16_t glyph : glyphs) hb_set_add(kept, glyph);
  hb_set_t* dropped = hb_subset_input_set(input.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
  for (const hb_tag_t tag : kUnneededTables) hb_set_add(dropped, tag);
  unsigned flags = HB_SUBSET_FLAGS_NO_HINTING;
  if (outlines == Outlines::kCff) flags |= HB_SUBSET_FLAGS_DESUBROUTINIZE;
  hb_subset_input_set_flags(input.get(), flags);
  // A variable font is set and embedded as its default instance.
  std::array<hb_ot_var_axis_info_t, 16> axes{};
  auto count = static_cast<unsigned>(axes.size());
  if (hb_ot_var_has_data(face) != 0) hb_ot_var_get_axis_infos(face, 0, &count, axes.data());
  for (unsigned i = 0; hb_ot_var_has_data(face) != 0 && i < count; ++i) {
    hb_subset_input_pin_axis_to_default(input.get(), face, axes[i].tag);
  }
  return input;
}

}  // namespace

hb_face_t* FaceData::face_for_subsets() const {
  if (subsets_cut_.fetch_add(1, std::memory_order_relaxed) < kSubsetsBeforePreparing) {
    return face.get();
  }
  std::call_once(prepare_once_, [this] {
    prepared_.reset(hb_subset_preprocess(face.get()));
    hb_face_make_immutable(prepared_.get());
  });
  return prepared_.get();
}

const SharedSubset* Face::shared_subset() const {
  std::call_once(data_->share_once, [this] {
    auto made = std::make_unique<SharedSubset>();
    made->glyphs = common_glyphs(data_->font.get());
    auto cut = subset(made->glyphs);
    if (!cut) return;
    made->subset = std::move(*cut);
    data_->shared = std::move(made);
  });
  return data_->shared.get();
}

tl::expected<Subset, FontError> Face::subset(const std::vector<std::uint16_t>& glyphs) const {
  const auto refused = [this] {
    return tl::unexpected(FontError{data_->path, "the glyphs it needs cannot be cut out of it"});
  };
  const std::scoped_lock turn(data_->cutting);
  hb_face_t* face = data_->face_for_subsets();
  const HbInput input = make_input(face, glyphs, data_->outlines);
  if (!input) return refused();
  const HbPlan plan(hb_subset_plan_create_or_fail(face, input.get()));
  if (!plan) return refused();
  const HbFace cut(hb_subset_plan_execute_or_fail(plan.get()));
  if (!cut) return refused();

  Subset out;
  out.is_cff = data_->outlines == Outlines::kCff;
  const HbBlob bytes(out.is_cff ? hb_face_reference_table(cut.get(), HB_TAG('C', 'F', 'F', ' '))
                                : hb_face_reference_blob(cut.get()));
  out.bytes = std::string(table_bytes(bytes.get()));
  if (out.bytes.empty()) return refused();
  const hb_map_t* new_ids = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
  out.new_ids.reserve(glyphs.size());
  for (const std::uint16_t glyph : glyphs) {
    const hb_codepoint_t id = hb_map_get(new_ids, glyph);
    if (id == HB_MAP_VALUE_INVALID || id > 0xFFFF) return refused();
    out.new_ids.push_back(static_cast<std::uint16_t>(id));
  }
  return out;
}

}  // namespace chalkleaf::type
