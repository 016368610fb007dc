#include "hand_over.h"

#include <poll.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace bentbook::desktop {
namespace {

constexpr int kPatienceMs = 2000;

std::optional<sockaddr_un> address_in(const std::string& folder) {
  const std::string path = folder + "/window";
  sockaddr_un address{};
  if (path.size() >= sizeof address.sun_path) return std::nullopt;
  address.sun_family = AF_UNIX;
  std::copy(path.begin(), path.end(), address.sun_path);
  return address;
}

int new_socket() { return socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0); }

const sockaddr* any(const sockaddr_un& address) { return reinterpret_cast<const sockaddr*>(&address); }

void shut(int& file) {
  if (file >= 0) close(file);
  file = -1;
}

}  // namespace

void HandOver::listen(const std::string& folder, std::function<void()> asked) {
  stop();
  const auto address = address_in(folder);
  if (!address) return;
  ear_ = new_socket();
  unlink(address->sun_path);  // of a window that was killed: the lock is ours
  if (ear_ < 0 || bind(ear_, any(*address), sizeof *address) != 0 || ::listen(ear_, 1) != 0 || pipe(end_) != 0)
    return shut(ear_);
  path_ = address->sun_path;
  thread_ = std::thread([this, asked = std::move(asked)] { hear(asked); });
}

void HandOver::hear(const std::function<void()>& asked) {
  pollfd files[] = {{ear_, POLLIN, 0}, {end_[0], POLLIN, 0}};
  while (poll(files, 2, -1) >= 0 && files[1].revents == 0) {
    if ((files[0].revents & POLLIN) == 0) continue;
    const int one = accept(ear_, nullptr, nullptr);
    if (one < 0) continue;
    if (const int before = asking_.exchange(one); before >= 0) close(before);
    asked();
  }
}

void HandOver::stop() {
  if (thread_.joinable()) {
    shut(end_[1]);  // which the thread sees
    thread_.join();
    unlink(path_.c_str());
  }
  shut(end_[0]);
  shut(ear_);
}

void HandOver::answer() {
  if (const int one = asking_.exchange(-1); one >= 0) close(one);
}

HandOver::~HandOver() {
  stop();
  answer();
}

bool ask_to_hand_over(const std::string& folder) {
  const auto address = address_in(folder);
  int file = address ? new_socket() : -1;
  if (file < 0) return false;
  pollfd answer{file, POLLIN, 0};
  const bool answered = connect(file, any(*address), sizeof *address) == 0 && poll(&answer, 1, kPatienceMs) == 1;
  shut(file);
  return answered;
}

}  // namespace bentbook::desktop
