// See the header.
#include "source/yaml_tree.h"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <sstream>

#include "base/text.h"
#include "source/yaml_spans.h"

namespace chalkleaf::source {
namespace {

/// Builds the tree from events; never throws. Goes on quietly after a failure.
class TreeBuilder final : public YAML::EventHandler {
 public:
  TreeBuilder(const YamlText& yaml, Diagnostics& diagnostics)
      : yaml_(yaml), text_(yaml.text), diagnostics_(diagnostics) {}

  YamlPass take() {
    while (!stack_.empty()) close();  // after a failure: keep what was complete
    return {std::move(root_), failure_};
  }
  /// yaml-cpp gave up at `at`.
  void fail(std::size_t at, const std::string& why) {
    if (failure_) return;
    YamlFailure failure{YamlFailure::Kind::kSyntax, std::min(at, text_.size()), 0};
    const bool flow = why == YAML::ErrorMsg::END_OF_SEQ_FLOW ||
                      why == YAML::ErrorMsg::END_OF_MAP_FLOW || why == YAML::ErrorMsg::FLOW_END;
    if (flow && !stack_.empty() && stack_.back().flow) {
      failure.kind = YamlFailure::Kind::kOpenBracket;
      failure.opened = stack_.back().begin;
    } else if (long_quote_) {
      failure.kind = YamlFailure::Kind::kOpenQuote;
      failure.opened = *long_quote_;
    } else if (why.starts_with(YAML::ErrorMsg::INVALID_ESCAPE)) {
      failure.kind = YamlFailure::Kind::kUnknownEscape;
    }
    failure_ = failure;
  }

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (documents_++ > 0) set_failure({YamlFailure::Kind::kSecondTree, place(mark), 0});
  }
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    if (!begin_node(mark, "?", anchor)) return;
    const std::size_t at = place(mark);
    if (at_key()) return add_word_key(at);
    YamlNode node;
    if (at < text_.size() && text_[at] == '~') {
      node.span = yaml_.span(at, at + 1);
    } else if (lower_ascii(text_.substr(at, 4)) == "null") {
      node.span = yaml_.span(at, at + 4);
    } else {
      node = nothing_at(at);
    }
    add(std::move(node));
  }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    if (!begin_node(mark, "?", 0)) return;
    refuse_mark(place(mark));
    YamlNode node;
    node.span = rest_of_line(place(mark));
    node.unreadable = true;
    add(std::move(node));
  }
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    if (!begin_node(mark, tag, anchor)) return;
    add(scalar(place(mark), value));
  }
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, YamlNode::Kind::kList);
  }
  void OnSequenceEnd() override { end(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, YamlNode::Kind::kMap);
  }
  void OnMapEnd() override { end(); }

 private:
  /// A list or map that is being read.
  struct Frame {
    YamlNode node;
    std::optional<YamlNode> key;  ///< of the entry whose value comes next
    std::size_t begin = 0;
    bool flow = false;
    bool is_key = false;  ///< it stands where a key should: refused, and its value with it
    bool drop_value = false;
  };

  std::size_t place(const YAML::Mark& mark) const {
    return std::min(static_cast<std::size_t>(std::max(mark.pos, 0)), text_.size());
  }
  void set_failure(YamlFailure failure) {
    if (!failure_) failure_ = failure;
  }
  bool at_key() const {
    return !stack_.empty() && stack_.back().node.kind == YamlNode::Kind::kMap &&
           !stack_.back().key && !stack_.back().drop_value;
  }

  // False when the node is to be passed over.
  bool begin_node(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    if (failure_ || skipped_ > 0) return false;
    if (++nodes_ > kMostYamlNodes) {
      if (nodes_ == kMostYamlNodes + 1) {
        diagnostics_.error(
            kBadValue, rest_of_line(place(mark)),
            fmt::format("there are more than {} values here; the rest is not read", kMostYamlNodes),
            "check that this is the right file");
      }
      return false;
    }
    const std::size_t at = place(mark);
    const char first = at < text_.size() ? text_[at] : ' ';
    const bool tagged = tag != "?" && tag != "!" && !tag.empty();
    if (anchor != 0 || tagged || first == '!') refuse_mark(at);
    return true;
  }

  void refuse_mark(std::size_t at) {
    diagnostics_.error(
        kBadValue, rest_of_line(at),
        fmt::format("a value cannot begin with ‘{}’", text_.substr(at, at < text_.size() ? 1 : 0)),
        "put the whole value in quotation marks");
  }

  Span rest_of_line(std::size_t at) const {
    std::string_view line = text_.substr(at, text_.find('\n', at) - at);
    while (!line.empty() && (line.back() == ' ' || line.back() == '\r')) line.remove_suffix(1);
    return yaml_.span(at, at + line.size());
  }

  YamlNode scalar(std::size_t at, const std::string& value) {
    YamlNode node;
    node.kind = YamlNode::Kind::kScalar;
    node.text = value;
    const char first = at < text_.size() ? text_[at] : ' ';
    if (first == '"' || first == '\'') {
      node.quoted = true;
      const auto end = quoted_end(text_, at);
      if (!end) set_failure({YamlFailure::Kind::kOpenQuote, at, at});
      node.span = yaml_.span(at, end.value_or(text_.size()));
      const bool many_lines = node.span.text().find('\n') != std::string_view::npos;
      if (many_lines) long_quote_ = at;
    } else if (first == '|' || first == '>') {
      node.quoted = true;
      node.span = yaml_.span(at, block_end(text_, at));
    } else if (first == '!' || first == '&') {
      node.span = rest_of_line(at);
    } else {
      node.span = yaml_.span(at, plain_end(text_, at, value));
    }
    if (!node.quoted || node.span.text().find('\n') == std::string_view::npos) long_quote_.reset();
    return node;
  }

  // A key such as `null:` or `~:`, which YAML takes for nothing and a coach for a word.
  void add_word_key(std::size_t at) {
    std::size_t end = at;
    while (end < text_.size() && text_[end] != ':' && text_[end] != '\n') ++end;
    YamlNode node;
    node.kind = YamlNode::Kind::kScalar;
    node.text = std::string(trim(text_.substr(at, end - at)));
    node.span = yaml_.span(at, at + node.text.size());
    add(std::move(node));
  }

  // A value that is not there: its place is behind its key's colon, or behind the `-`.
  YamlNode nothing_at(std::size_t at) const {
    YamlNode node;
    if (stack_.empty() || !stack_.back().key) {
      while (at > 0 && (text_[at - 1] == ' ' || text_[at - 1] == '\n' || text_[at - 1] == '\r'))
        --at;
      node.span = yaml_.span(at, at);
      return node;
    }
    std::size_t end = stack_.back().key->span.end - yaml_.offset;
    while (end < text_.size() && text_[end] == ' ') ++end;
    if (end < text_.size() && text_[end] == ':') ++end;
    node.span = yaml_.span(end, end);
    for (const Stretch& gone : yaml_.left_out) {
      if (gone.begin < end || gone.begin - end > 64) continue;
      const auto between = text_.substr(end, gone.begin - end);
      if (between.find_first_not_of(" \t\r\n") != std::string_view::npos) continue;
      node.unreadable = true;
      node.span = yaml_.span(gone.begin, gone.end);
    }
    return node;
  }

  void open(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
            YamlNode::Kind kind) {
    if (!begin_node(mark, tag, anchor) || stack_.size() >= kDeepestYaml) {
      if (skipped_++ == 0 && !failure_ && nodes_ <= kMostYamlNodes) {
        diagnostics_.error(kBadValue, rest_of_line(place(mark)),
                           "this is nested too deeply; what is inside is not read",
                           "write it with fewer levels");
      }
      return;
    }
    Frame frame;
    frame.node.kind = kind;
    frame.begin = place(mark);
    frame.flow = frame.begin < text_.size() &&
                 text_[frame.begin] == (kind == YamlNode::Kind::kList ? '[' : '{');
    frame.node.span = yaml_.span(frame.begin, frame.begin + 1);
    frame.is_key = at_key();
    if (frame.is_key) {
      diagnostics_.error(kBadValue, rest_of_line(frame.begin), "a key must be a word or a few",
                         "write the entry as `key: value`");
    }
    stack_.push_back(std::move(frame));
  }

  void end() {
    if (failure_) return;
    if (skipped_ > 0) {
      --skipped_;
      if (skipped_ == 0 && nodes_ <= kMostYamlNodes) {
        YamlNode node;
        node.unreadable = true;
        node.span = stack_.empty() ? yaml_.span(0, 0) : stack_.back().node.span;
        add(std::move(node));
      }
      return;
    }
    close();
  }

  void close() {
    Frame frame = std::move(stack_.back());
    stack_.pop_back();
    if (frame.key) {  // only after a failure: the entry that was being read
      YamlNode node;
      node.unreadable = true;
      node.span = frame.key->span;
      frame.node.entries.emplace_back(std::move(*frame.key), std::move(node));
    }
    if (frame.flow && !failure_) {
      const char closing = frame.node.kind == YamlNode::Kind::kList ? ']' : '}';
      std::size_t at = frame.node.span.end - yaml_.offset;
      while (at < text_.size() && text_[at] != closing) {
        const std::size_t next = skip_blank(text_, at);
        at = next > at ? next : at + 1;
      }
      frame.node.span.end = yaml_.span(0, std::min(at + 1, text_.size())).end;
    }
    if (frame.is_key) {
      stack_.back().drop_value = true;
      return;
    }
    add(std::move(frame.node));
  }

  void add(YamlNode node) {
    if (stack_.empty()) {
      root_ = std::move(node);
      return;
    }
    Frame& top = stack_.back();
    top.node.span.end = std::max(top.node.span.end, node.span.end);
    if (top.node.kind == YamlNode::Kind::kList) {
      top.node.items.push_back(std::move(node));
    } else if (top.drop_value) {
      top.drop_value = false;
    } else if (!top.key) {
      check_key(node, top.flow);
      top.key = std::move(node);
    } else {
      top.node.entries.emplace_back(std::move(*top.key), std::move(node));
      top.key.reset();
    }
  }

  // yaml-cpp takes a last line without a colon for a key; we do not.
  void check_key(const YamlNode& key, bool in_flow) {
    if (key.is_scalar() && key.text == "<<") {
      diagnostics_.error(kBadValue, key.span, "entries cannot be merged in with ‘<<’",
                         "write the entries out");
    }
    const std::size_t end = key.span.end - yaml_.offset;
    const std::size_t next = skip_blank(text_, end);
    if (in_flow || failure_ || (next < text_.size() && text_[next] == ':')) return;
    set_failure({YamlFailure::Kind::kSyntax, key.span.begin - yaml_.offset, 0});
  }

  const YamlText& yaml_;
  std::string_view text_;
  Diagnostics& diagnostics_;
  YamlNode root_;
  std::vector<Frame> stack_;
  std::optional<YamlFailure> failure_;
  std::optional<std::size_t> long_quote_;  ///< the last scalar, when quoted over several lines
  std::size_t nodes_ = 0;
  std::size_t skipped_ = 0;  ///< how many levels of a refused list or map we are inside
  int documents_ = 0;
};

}  // namespace

YamlPass read_once(const YamlText& yaml, Diagnostics& diagnostics) {
  TreeBuilder builder(yaml, diagnostics);
  std::istringstream in(yaml.text);
  try {
    YAML::Parser parser(in);
    if (parser.HandleNextDocument(builder)) parser.HandleNextDocument(builder);
  } catch (const YAML::Exception& problem) {  // the wall: no exception of yaml-cpp's gets further
    builder.fail(static_cast<std::size_t>(std::max(problem.mark.pos, 0)), problem.msg);
  }
  YamlPass pass = builder.take();
  if (!pass.failure && pass.root.is_scalar()) {
    pass.failure = YamlFailure{YamlFailure::Kind::kNoMap, 0, 0};
  }
  return pass;
}

}  // namespace chalkleaf::source
