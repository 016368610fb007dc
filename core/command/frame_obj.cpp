#include "command/frame_obj.h"

#include "geometry/mesh.h"
#include "measure/print.h"

namespace bentbook {
namespace {

std::string without_blanks(std::string name) {
  for (char& c : name)
    if (static_cast<unsigned char>(c) <= ' ') c = '_';
  return name;
}

}  // namespace

std::string frame_obj(const Frame& frame) {
  std::string out = "# inches; x across the building, y along the ridge, z up\n";
  int before = 1;
  for (const Timber& timber : frame.timbers) {
    if (!timber.placed) continue;
    const Mesh mesh = mesh_of(solid_of(timber));
    out += "o " + without_blanks(timber.mark) + "\n";
    for (const Vec3& corner : mesh.corners) {
      const Vec3 p = to_world(timber.at, corner);
      out += "v " + print_fixed(p.x, 9) + " " + print_fixed(p.y, 9) + " " + print_fixed(p.z, 9) + "\n";
    }
    for (const Mesh::Triangle& t : mesh.triangles)
      out += "f " + std::to_string(before + t.a) + " " + std::to_string(before + t.b) + " " +
             std::to_string(before + t.c) + "\n";
    before += static_cast<int>(mesh.corners.size());
  }
  return out;
}

}  // namespace bentbook
