#include "cli/command_line.h"

#include <CLI/CLI.hpp>
#include <map>
#include <sstream>

#include "base/text.h"

namespace chalkleaf::cli {
namespace {

std::vector<std::string> as_strings(const std::vector<std::string_view>& views) {
  return {views.begin(), views.end()};
}

std::string command_names() {
  std::vector<std::string> names;
  for (const Command& command : commands()) names.emplace_back(command.name);
  return join_list(names, "or");
}

/// One command as CLI11 knows it, and where it puts what it reads.
class Parsed {
 public:
  Parsed(CLI::App& app, const Command& command) : command_(command) {
    std::map<const Option*, CLI::Option*> added;
    for (const Option* option : command.options) added[option] = add(app, *option);
    for (const Option* option : command.options) {
      if (option->needs != nullptr) added[option]->needs(added.at(option->needs));
    }
  }

  Chosen chosen() const {
    Chosen out{&command_, {}};
    for (const auto& [option, values] : values_) {
      if (!values.empty() || flags_.count(option) > 0) out.given.add(*option, values);
    }
    return out;
  }

 private:
  CLI::Option* add(CLI::App& app, const Option& option) {
    const std::string name(option.name);
    const std::string about(option.about);
    if (option.is_flag()) {
      return app.add_flag_callback(
          name, [this, &option] { flags_[&option] = true, values_[&option]; }, about);
    }
    CLI::Option* out = app.add_option(name, values_[&option], about);
    if (!option.is_argument()) out->type_name(std::string(option.value));
    switch (option.times) {
      case Times::kAtMostOnce:
        out->expected(1)->allow_extra_args(false);  // or `--out x a.md` takes the plan, too
        break;
      case Times::kOnce:
        out->required()->expected(1);
        break;
      case Times::kAtLeastOnce:
        out->required();
        break;
      case Times::kAny:
        break;
    }
    if (!option.choices.empty()) out->check(CLI::IsMember(as_strings(option.choices)));
    if (option.refuses != nullptr) out->check(option.refuses);
    return out;
  }

  const Command& command_;
  std::map<const Option*, std::vector<std::string>> values_;
  std::map<const Option*, bool> flags_;
};

std::string footer_of(const Command& command) {
  std::string out =
      command.examples.find('\n') == std::string_view::npos ? "Example:" : "Examples:";
  return out + "\n  " + replace_all(command.examples, "\n", "\n  ");
}

Stop no_command(int count, const char* const* values) {
  const std::string what =
      count > 1 ? "‘" + printable(values[1]) + "’ is not a command" : "no command is given";
  return {kUsageError, "chalkleaf: " + what + ": write " + command_names() +
                           "\nRun with --help for more information.\n"};
}

}  // namespace

std::variant<Chosen, Stop> read_command_line(int count, const char* const* values) {
  CLI::App app(
      "Chalkleaf checks gymnastics session plans and sets them as coach cards and home sheets.",
      "chalkleaf");
  app.set_version_flag("--version", "chalkleaf " + std::string(club::version()));
  app.require_subcommand(1);
  app.footer(
      "Example:\n  chalkleaf build plans\n"
      "Exit codes: 0 all well, 1 a plan has errors, 2 the command or the surroundings.");
  // Only the options of the command that is named are made: nobody waits for those of the others.
  std::optional<Parsed> parsed;
  for (const Command& command : commands()) {
    CLI::App* sub = app.add_subcommand(std::string(command.name), std::string(command.about));
    if (count < 2 || command.name != values[1]) continue;
    sub->footer(footer_of(command));
    parsed.emplace(*sub, command);
  }
  try {
    app.parse(count, values);
  } catch (const CLI::ParseError& error) {
    std::ostringstream out;
    std::ostringstream err;
    const bool asked = app.exit(error, out, err) == 0;
    if (!asked && app.get_subcommands().empty()) return no_command(count, values);
    return Stop{asked ? 0 : kUsageError, asked ? out.str() : "chalkleaf: " + err.str()};
  }
  if (!parsed) return no_command(count, values);
  Chosen out = parsed->chosen();
  const std::string refused =
      out.command->refuses != nullptr ? out.command->refuses(out.given) : "";
  if (!refused.empty()) return Stop{kUsageError, "chalkleaf: " + refused + "\n"};
  return out;
}

MessageStyle message_style(const Given& given) {
  const std::string written = given.text(kMessages).value_or("human");
  if (written == "short") return MessageStyle::kShort;
  return written == "json" ? MessageStyle::kJson : MessageStyle::kHuman;
}

}  // namespace chalkleaf::cli
