#pragma once
/// One window asks the other one, over a socket in the data folder, to let it write.

#include <atomic>
#include <functional>
#include <string>
#include <thread>

namespace bentbook::desktop {

/// The ear of the window that writes.
class HandOver {
 public:
  HandOver() = default;
  ~HandOver();
  HandOver(const HandOver&) = delete;
  HandOver& operator=(const HandOver&) = delete;

  /// From now on `asked` is called, from a thread of its own, when another window wants to write. Where no socket can
  /// be had (a path that is too long, a folder that takes none) nobody is heard.
  void listen(const std::string& folder, std::function<void()> asked);
  [[nodiscard]] bool is_asked() const { return asking_ >= 0; }
  /// Nobody is heard any more: before the lock is let go, so that the next one's ear is not taken for this one.
  void stop();
  /// Whoever asked is told that the lock is free.
  void answer();

 private:
  void hear(const std::function<void()>& asked);
  std::thread thread_;
  std::string path_;
  int ear_ = -1, end_[2] = {-1, -1};
  std::atomic<int> asking_{-1};
};

/// Asks whoever listens there, and waits two seconds at most until the lock is free. False: nobody has answered.
bool ask_to_hand_over(const std::string& folder);

}  // namespace bentbook::desktop
