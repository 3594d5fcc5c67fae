#include "pdf/metadata.h"

#include <fmt/format.h>

#include "base/date.h"
#include "base/text.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

struct Moment {
  Date date;
  std::int64_t hour, minute, second;
};

Moment moment_utc(std::int64_t seconds_since_1970) {
  constexpr std::int64_t kDay = 86'400;
  std::int64_t day = seconds_since_1970 / kDay;
  std::int64_t rest = seconds_since_1970 % kDay;
  if (rest < 0) {
    rest += kDay;
    --day;
  }
  return {date_from_days(day), rest / 3600, rest / 60 % 60, rest % 60};
}

}  // namespace

ObjectId write_info(const page::DocumentInfo& info, Objects& objects) {
  std::string out = "/Title " + text_string(info.title) + "\n";
  if (!info.author.empty()) out += "/Author " + text_string(info.author) + "\n";
  if (!info.subject.empty()) out += "/Subject " + text_string(info.subject) + "\n";
  if (!info.producer.empty()) out += "/Producer " + text_string(info.producer) + "\n";
  if (info.created) {
    const Moment at = moment_utc(*info.created);
    out += fmt::format("/CreationDate (D:{:04}{:02}{:02}{:02}{:02}{:02}Z)\n", at.date.year,
                       at.date.month, at.date.day, at.hour, at.minute, at.second);
  }
  return objects.add(std::move(out));
}

ObjectId write_xmp(const page::DocumentInfo& info, Objects& objects) {
  std::string out =
      "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
      "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
      "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
      "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" "
      "xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\">\n"
      "<dc:format>application/pdf</dc:format>\n";
  const auto in_default_language = [&](const char* name, const std::string& text) {
    out += fmt::format(
        "<dc:{0}><rdf:Alt><rdf:li xml:lang=\"x-default\">{1}</rdf:li></rdf:Alt></dc:{0}>\n", name,
        escape_xml(text));
  };
  in_default_language("title", info.title);
  if (!info.author.empty()) {
    out += fmt::format("<dc:creator><rdf:Seq><rdf:li>{}</rdf:li></rdf:Seq></dc:creator>\n",
                       escape_xml(info.author));
  }
  if (!info.subject.empty()) in_default_language("description", info.subject);
  out += fmt::format("<dc:language><rdf:Bag><rdf:li>{}</rdf:li></rdf:Bag></dc:language>\n",
                     escape_xml(info.language));
  if (!info.producer.empty()) {
    out += fmt::format("<pdf:Producer>{}</pdf:Producer>\n", escape_xml(info.producer));
  }
  if (info.created) {
    const Moment at = moment_utc(*info.created);
    out += fmt::format("<xmp:CreateDate>{}T{:02}:{:02}:{:02}Z</xmp:CreateDate>\n",
                       iso_text(at.date), at.hour, at.minute, at.second);
  }
  // ISO 14289-1, 5: what says that the file is PDF/UA-1.
  out += "<pdfuaid:part xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">1</pdfuaid:part>\n";
  out += "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"w\"?>";
  return objects.add_stream("/Type /Metadata\n/Subtype /XML\n", out, Packing::kPlain);
}

}  // namespace chalkleaf::pdf
