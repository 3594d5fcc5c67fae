#include "club/draw.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "club/club_file.h"
#include "club/figures.h"
#include "club/font_catalogue.h"
#include "club/places.h"
#include "club/resources.h"
#include "club/select.h"
#include "figure/picture.h"
#include "figure/svg.h"
#include "figure/truth.h"
#include "pdf/write.h"
#include "sheet/figure_sheet.h"

namespace chalkleaf::club {
namespace {

/// Everything to draw with, made in one go.
class Studio {
 public:
  Studio(const DrawRequest& request, const Surroundings& around, Listener& listener)
      : request_(request), around_(around), listener_(listener) {}

  bool open() {
    const auto data = open_data_folder(around_.files, around_.environment, around_.program);
    if (!data) return problem(data.error());
    Diagnostics found;
    theme_ = load_theme(around_.files, *data, found);
    labels_ = load_labels(around_.files, *data, "en", found);
    type::Catalogue fonts = load_font_catalogue(around_.files, *data, found);
    if (!theme_ || !labels_) {
      tell(found);
      return problem("the program's own themes cannot be read");
    }
    if (!take_folder(*data, found)) return false;
    tell(found);
    fonts_ = std::make_unique<type::Fonts>(std::move(fonts), around_.files);
    for (const type::FontError& error : fonts_->open_primary()) {
      problem("the font " + error.path + " cannot be used: " + error.message);
    }
    return !out_.failed || figures_.catalogue != nullptr;
  }

  // What the user called it may be several words, quoted or not.
  std::vector<const figure::Figure*> named() {
    std::vector<const figure::Figure*> out;
    std::string whole = fmt::format("{}", fmt::join(request_.names, " "));
    if (const auto* figure = figures_.catalogue->find(whole)) return {figure};
    for (const std::string& name : request_.names) {
      const auto* figure = figures_.catalogue->find(name);
      if (figure == nullptr) {
        const std::string& asked = request_.names.size() > 1 ? whole : name;
        const auto meant = figures_.catalogue->closest(asked);
        problem(fmt::format("there is no figure ‘{}’{}", printable(asked),
                            meant ? fmt::format(": did you mean ‘{}’?", *meant)
                                  : "; ‘chalkleaf figures’ draws all there are"));
        return {};
      }
      out.push_back(figure);
    }
    return out;
  }

  sheet::ShownFigure shown(const figure::Figure& figure) const {
    sheet::ShownFigure out;
    out.name = figure.name.text;
    out.family = figure.family.empty() ? "Others" : figure.family;
    out.scene = figures_.drawings->find(figure.name.text, request_.years, figure::Extent::kWhole);
    out.glance = figures_.drawings->find(figure.name.text, request_.years, figure::Extent::kGlance);
    return out;
  }

  const sheet::Theme& theme() const { return *theme_; }
  figure::Body body() const { return figure::Body::of_age(request_.years); }

  bool write(const std::string& path, std::string_view bytes) {
    const std::string whole = normal_path(join_path(request_.standing, path));
    const auto written = around_.files.write_whole(whole, bytes);
    if (!written)
      return problem(fmt::format("{} cannot be written: {}", path, written.error().message));
    out_.path = path;
    return true;
  }

  bool write_pdf(const std::string& path, const std::vector<sheet::ShownFigure>& all,
                 bool contact) {
    const plan::Club club;
    sheet::Context context{*theme_, *labels_, club, request_.paper, {}, {}, {}, {}, nullptr};
    context.producer = "Chalkleaf " + std::string(version());
    type::Typesetter typesetter(*fonts_, "en");
    Diagnostics found;
    const page::DisplayList list = contact ? sheet::contact_sheet(all, context, typesetter, found)
                                           : sheet::figure_pages(all, context, typesetter, found);
    tell(found);
    const auto bytes = pdf::write(list, *fonts_);
    if (!bytes)
      return problem("the figures could not be made into a PDF: " + bytes.error().message);
    out_.figures = all.size();
    return write(path, *bytes);
  }

  void tell(const Diagnostics& found) {
    for (const Diagnostic& one : found.sorted()) {
      if (one.severity == Severity::kError) out_.exit_code = std::max(out_.exit_code, 1);
      listener_.found(one);
    }
  }
  bool problem(const std::string& sentence) {
    out_.exit_code = 2;
    out_.failed = true;
    listener_.problem(sentence);
    return false;
  }
  Drawn& out() { return out_; }

 private:
  // A club's folder has figures in `figures`; any other folder is one of figure files itself.
  bool take_folder(const DataFolder& data, Diagnostics& found) {
    const std::string standing =
        club_above(around_.files, request_.standing).value_or(request_.standing);
    const std::string folder =
        request_.folder ? normal_path(join_path(request_.standing, *request_.folder)) : standing;
    const auto real = around_.files.real_path(folder);
    if (!real || around_.files.kind(*real) != FileKind::kFolder) {
      return problem(
          fmt::format("‘{}’ is not a folder; name a club's folder, or one of figure files",
                      printable(request_.folder.value_or("."))));
    }
    const bool club = around_.files.kind(join_path(*real, "club.yaml")) == FileKind::kFile;
    if (club || !request_.folder) {
      figures_ = load_figures(around_.files, data, club ? *real : "", request_.standing, found);
      return true;
    }
    figures_ = load_figure_folder(around_.files, data, *real, request_.standing, found);
    only_own_ = true;
    return true;
  }

 public:
  /// The figures of the folder asked for; all where none was.
  std::vector<const figure::Figure*> asked() const {
    std::vector<const figure::Figure*> out;
    for (const figure::Figure* figure : figures_.catalogue->all()) {
      const bool own = std::any_of(
          figures_.sources.begin() + static_cast<std::ptrdiff_t>(figures_.shipped),
          figures_.sources.end(),
          [&](const SourcePtr& source) { return source.get() == figure->name.span.source; });
      if (own || !only_own_) out.push_back(figure);
    }
    return out;
  }

 private:
  const DrawRequest& request_;
  const Surroundings& around_;
  Listener& listener_;
  std::shared_ptr<const sheet::Theme> theme_;
  std::shared_ptr<const sheet::Labels> labels_;
  std::unique_ptr<type::Fonts> fonts_;
  Figures figures_;
  bool only_own_ = false;
  Drawn out_;
};

// `front support` is drawn into front-support.pdf.
std::string file_name_for(std::string_view name) {
  std::string out;
  for (const char c : lower_ascii(name)) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (plain) {
      out += c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? "figure" : out;
}

}  // namespace

Drawn draw_figures(const DrawRequest& request, const Surroundings& around, Listener& listener) {
  Studio studio(request, around, listener);
  if (!studio.open()) return studio.out();
  const std::vector<const figure::Figure*> figures = studio.named();
  if (figures.empty()) return studio.out();
  const std::string path = request.out.value_or(file_name_for(figures.front()->name.text) + ".pdf");
  if (path.ends_with(".svg")) {
    if (figures.size() > 1) {
      studio.problem("an SVG file holds one figure; name one, or draw a PDF");
      return studio.out();
    }
    const sheet::ShownFigure shown = studio.shown(*figures.front());
    studio.out().figures = 1;
    studio.write(path, figure::svg(*shown.scene, studio.theme().inks, shown.name));
    return studio.out();
  }
  if (!path.ends_with(".pdf")) {
    studio.problem(fmt::format("‘{}’ should end in .pdf or .svg", printable(path)));
    return studio.out();
  }
  std::vector<sheet::ShownFigure> all;
  for (const figure::Figure* figure : figures) all.push_back(studio.shown(*figure));
  studio.write_pdf(path, all, false);
  return studio.out();
}

Drawn draw_catalogue(const DrawRequest& request, const Surroundings& around, Listener& listener) {
  Studio studio(request, around, listener);
  if (!studio.open()) return studio.out();
  std::vector<sheet::ShownFigure> all;
  for (const figure::Figure* figure : studio.asked()) {
    sheet::ShownFigure shown = studio.shown(*figure);
    Diagnostics found;
    figure::check(*figure, figure::show(*figure, studio.body()), found);
    for (const Diagnostic& one : found.sorted()) shown.findings.push_back(one.message + ".");
    all.push_back(std::move(shown));
  }
  if (all.empty()) {
    studio.problem("there are no figures there");
    return studio.out();
  }
  // Families keep the order of their files, whichever file a figure of theirs is in.
  std::vector<std::string> order;
  for (const sheet::ShownFigure& one : all) {
    if (std::find(order.begin(), order.end(), one.family) == order.end())
      order.push_back(one.family);
  }
  std::stable_sort(all.begin(), all.end(), [&](const auto& a, const auto& b) {
    return std::find(order.begin(), order.end(), a.family) <
           std::find(order.begin(), order.end(), b.family);
  });
  const std::string path = request.out.value_or("figures.pdf");
  if (!path.ends_with(".pdf")) {
    studio.problem(fmt::format("‘{}’ should end in .pdf", printable(path)));
    return studio.out();
  }
  studio.write_pdf(path, all, true);
  return studio.out();
}

}  // namespace chalkleaf::club
