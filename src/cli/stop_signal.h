// Ctrl-C: the plans under way are finished, no other is begun, and the run ends as one that was
// stopped. When they are not finished within two seconds, or at a second Ctrl-C, it ends at once:
// files are written beside their place and renamed, so what is there is whole then, too. Tested
// through the program by tests/terminal.py.
#pragma once

namespace chalkleaf::cli {

/// From now on SIGINT, SIGTERM and SIGHUP are remembered once each (not those the program was
/// started to ignore, as by nohup).
void listen_for_stop();
/// True once one of them came. Safe from any thread.
bool stop_asked();
/// Ends the program by the signal that came, so that a shell or a script sees what ended it; does
/// nothing when none came. Output must have been flushed.
void end_if_stopped();

}  // namespace chalkleaf::cli
