#pragma once
/// A reference to something that can be called, for as long as the call lasts: two words, nothing allocated, and unlike
/// std::function no code of its own for each lambda (a download pays for every one).

#include <memory>
#include <type_traits>
#include <utility>

namespace bentbook {

template <class Signature>
class FunctionRef;

template <class Answer, class... Args>
class FunctionRef<Answer(Args...)> {
 public:
  /// Binds to anything that can be called so, temporaries too: they live until the call that takes this returns.
  template <class Callable>
  requires(!std::is_same_v<std::remove_cvref_t<Callable>, FunctionRef> &&
           std::is_invocable_r_v<Answer, Callable&, Args...>)
      FunctionRef(Callable&& callable)  // NOLINT(google-explicit-constructor, bugprone-forwarding-reference-overload)
      : object_(const_cast<void*>(static_cast<const void*>(std::addressof(callable)))),
        call_([](void* object, Args... args) -> Answer {
          return (*static_cast<std::remove_reference_t<Callable>*>(object))(std::forward<Args>(args)...);
        }) {}

  Answer operator()(Args... args) const { return call_(object_, std::forward<Args>(args)...); }

 private:
  void* object_;
  Answer (*call_)(void*, Args...);
};

}  // namespace bentbook
