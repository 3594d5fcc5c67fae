#include "figure/svg.h"

#include <cmath>

namespace chalkleaf::figure {
namespace {

constexpr double kUnitsAMetre = 500;

// Two decimals, never in exponents, never `-0`.
std::string number(double value) {
  const long long hundredths = std::llround(value * 100);
  const long long whole = std::llabs(hundredths);
  std::string out = hundredths < 0 ? "-" : "";
  out += std::to_string(whole / 100);
  if (whole % 100 != 0) {
    out += '.';
    out += static_cast<char>('0' + whole % 100 / 10);
    if (whole % 10 != 0) out += static_cast<char>('0' + whole % 10);
  }
  return out;
}

}  // namespace

std::string svg(const Scene& scene, const Palette& palette, const std::string& title) {
  const double margin = 0.04;
  const double left = scene.box.left - margin;
  const double top = scene.box.top + margin;
  const auto spot = [&](const Spot& s) {
    return number((s.x - left) * kUnitsAMetre) + " " + number((top - s.y) * kUnitsAMetre);
  };
  const auto colour = [&](Ink ink) { return hex_text(palette[static_cast<std::size_t>(ink)]); };
  const double numbers = scene.frames.empty() ? 0 : 0.16;
  const std::string width = number((scene.box.width() + 2 * margin) * kUnitsAMetre);
  const std::string height = number((scene.box.height() + 2 * margin + numbers) * kUnitsAMetre);
  std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width + "\" height=\"" +
                    height + "\" viewBox=\"0 0 " + width + " " + height + "\" role=\"img\">\n";
  out += "<title>" + escape_xml(title) + "</title>\n<desc>" + escape_xml(scene.alternative) +
         "</desc>\n";
  for (const Shape& shape : scene.shapes) {
    std::string path;
    for (const Step& step : shape.steps) {
      switch (step.kind) {
        case Step::Kind::kMove:
          path += "M" + spot(step.a);
          break;
        case Step::Kind::kLine:
          path += "L" + spot(step.a);
          break;
        case Step::Kind::kCurve:
          path += "C" + spot(step.a) + " " + spot(step.b) + " " + spot(step.c);
          break;
        case Step::Kind::kClose:
          path += "Z";
          break;
      }
    }
    out += "<path d=\"" + path + "\" fill=\"" + (shape.fill ? colour(*shape.fill) : "none") + "\"";
    if (shape.line) {
      out += " stroke=\"" + colour(*shape.line) + "\" stroke-width=\"" +
             number(shape.width * kUnitsAMetre) +
             "\" stroke-linecap=\"round\" stroke-linejoin=\"round\"";
      if (shape.dash > 0) {
        out += " stroke-dasharray=\"" + number(shape.dash * kUnitsAMetre) + "\"";
      }
    }
    out += "/>\n";
  }
  for (std::size_t i = 0; i < scene.frames.size(); ++i) {
    out += "<text x=\"" + number((scene.frames[i] - left) * kUnitsAMetre) + "\" y=\"" +
           number((top - scene.box.bottom + 0.13) * kUnitsAMetre) +
           "\" text-anchor=\"middle\" font-family=\"sans-serif\" font-size=\"" +
           number(0.10 * kUnitsAMetre) + "\" fill=\"" + colour(Ink::kBody) + "\">" +
           std::to_string(i + 1) + "</text>\n";
  }
  return out + "</svg>\n";
}

}  // namespace chalkleaf::figure
