// A rotation as clauses. Internal to the room.
#pragma once

#include <utility>
#include <vector>

#include "rota/model.h"
#include "rota/sat.h"

namespace chalkleaf::rota {

class Encoding {
 public:
  Encoding(const Rotation& rotation, Sat& sat);

  /// That a group is at a station in a turn; the station behind the last is nowhere.
  Literal at(std::size_t group, std::size_t turn, std::size_t station) const {
    return cells_[(group * turns_ + turn) * (stations_ + 1) + station];
  }
  std::size_t nowhere() const { return stations_; }
  /// Clauses that hold while the literal given back is assumed.
  Literal add(const Rule& rule);

 private:
  void places();
  void visits(std::size_t group);
  void station(std::size_t turn, std::size_t station);
  void coaches();
  std::pair<std::size_t, std::size_t> turns_out(std::size_t there) const;

  void before(const Rule& rule, Literal on);
  void kit(const Rule& rule, Literal on);
  void halls(const Rule& rule, Literal on);
  void same_way(Literal on);
  void balanced(Literal on);

  const Rotation& all_;
  Sat& sat_;
  std::size_t groups_;
  std::size_t turns_;
  std::size_t stations_;
  bool may_share_ = false;
  std::vector<Literal> cells_;
};

}  // namespace chalkleaf::rota
