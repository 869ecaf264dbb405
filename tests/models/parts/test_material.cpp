#include "models/parts/material.h"

#include <Eigen/Cholesky>
#include <catch2/catch.hpp>

using namespace gapstrain::models;

namespace {

// The 3-D compliance with the radial direction as transverse; `nu_tr` is the contraction along R per stretch along
// T.
Eigen::Matrix3d compliance(const CorticalBone& bone, double nu_tr) {
  const double e_l = bone.longitudinal_modulus.value(), e_t = bone.transverse_modulus.value();
  const double lt = -bone.poissons_ratio_lt / e_l, tr = -nu_tr / e_t;
  Eigen::Matrix3d matrix;
  matrix << 1.0 / e_l, lt, lt, lt, 1.0 / e_t, tr, lt, tr, 1.0 / e_t;
  return matrix;
}

}  // namespace

TEST_CASE("every metal of the catalogue has a source and elastic constants of a metal", "[models][parts]") {
  REQUIRE(metal_names().size() >= 6);
  for (const auto& name : metal_names()) {
    const auto metal = find_metal(name);
    REQUIRE(metal);
    CAPTURE(name);
    CHECK(metal->name == name);
    CHECK_FALSE(metal->source.empty());
    CHECK(metal->youngs_modulus > 90e3 * mpa);
    CHECK(metal->youngs_modulus < 210e3 * mpa);
    CHECK(metal->poissons_ratio > 0.2);
    CHECK(metal->poissons_ratio < 0.5);
    REQUIRE(metal->yield_strength);
    CHECK(*metal->yield_strength > 0.0005 * metal->youngs_modulus);
  }
}

TEST_CASE("every metal with fatigue data has a spread and a line that falls", "[models][parts]") {
  int with_data = 0;
  for (const auto& name : metal_names()) {
    const auto metal = find_metal(name);
    CAPTURE(name);
    REQUIRE(metal->ultimate_strength.has_value() == metal->fatigue_strength.has_value());
    if (!metal->fatigue_strength) continue;
    ++with_data;
    const auto& strength = *metal->fatigue_strength;
    CHECK_FALSE(strength.source.empty());
    CHECK(strength.low < strength.middle);
    CHECK(strength.middle < strength.high);
    CHECK(strength.high < 0.9 * *metal->ultimate_strength);
    CHECK(*metal->ultimate_strength > *metal->yield_strength);
  }
  CHECK(with_data >= 6);
}

TEST_CASE("every cortex of the catalogue has a source and a positive definite law", "[models][parts]") {
  REQUIRE(cortex_names().size() >= 3);
  for (const auto& name : cortex_names()) {
    const auto bone = find_cortex(name);
    REQUIRE(bone);
    CAPTURE(name);
    CHECK(bone->name == name);
    CHECK_FALSE(bone->source.empty());
    CHECK(Eigen::LLT<Eigen::Matrix3d>(compliance(*bone, 0.4)).info() == Eigen::Success);
    for (const Stress& modulus : {bone->shear_modulus_lt, bone->shear_modulus_lr, bone->shear_modulus_tr}) {
      CHECK(modulus > 0.15 * bone->longitudinal_modulus);
      CHECK(modulus < 0.5 * bone->longitudinal_modulus);
    }
    CHECK(bone->longitudinal_modulus >= bone->transverse_modulus);
  }
}

TEST_CASE("the human femur is transversely isotropic, and about as stiff as ultrasound finds it",
          "[models][parts]") {
  // The catalogue's figures are of mechanical tests (D. T. Reilly and A. H. Burstein 1975). Other bones, another
  // way: R. B. Ashman et al. 1984, J Biomech 17:349, by ultrasound 20.0 GPa along, 12.0 and 13.4 GPa across (from
  // memory).
  const auto bone = find_cortex("human-femur");
  REQUIRE(bone);
  CHECK(bone->longitudinal_modulus.value() == Approx(20000.0).epsilon(0.2));
  CHECK(bone->transverse_modulus.value() == Approx(0.5 * (12000.0 + 13400.0)).epsilon(0.2));
  CHECK(bone->shear_modulus_lr == bone->shear_modulus_lt);
  // Isotropic across the shaft with nu_TT = 0.58 (Reilly and Burstein, as tabulated in S. C. Cowin, Bone
  // Mechanics, 1989, p. 102), and the law is still positive definite with it.
  CHECK(bone->shear_modulus_tr.value() == Approx(bone->transverse_modulus.value() / (2.0 * 1.58)).epsilon(1e-3));
  CHECK(Eigen::LLT<Eigen::Matrix3d>(compliance(*bone, 0.58)).info() == Eigen::Success);
}

TEST_CASE("every tissue of the catalogue has a source and is softer than bone", "[models][parts]") {
  REQUIRE(tissue_names().size() >= 5);
  for (const auto& name : tissue_names()) {
    const auto tissue = find_tissue(name);
    REQUIRE(tissue);
    CAPTURE(name);
    CHECK_FALSE(tissue->source.empty());
    CHECK(tissue->youngs_modulus > 0.0 * mpa);
    CHECK(tissue->youngs_modulus <= 6000.0 * mpa);
    CHECK(tissue->poissons_ratio > 0.0);
    CHECK(tissue->poissons_ratio < 0.5);
  }
}

TEST_CASE("isotropic cortex has one modulus and the shear modulus that goes with it", "[models][parts]") {
  const CorticalBone bone = isotropic_cortex("tube", 13700.0 * mpa, 0.37, "none");
  CHECK(bone.longitudinal_modulus == bone.transverse_modulus);
  CHECK(bone.shear_modulus_lt.value() == Approx(5000.0));
  CHECK(bone.shear_modulus_lr == bone.shear_modulus_lt);
  CHECK(bone.shear_modulus_tr == bone.shear_modulus_lt);
  CHECK_FALSE(bone.yield_strain);
}

TEST_CASE("an unknown material is not found", "[models][parts]") {
  CHECK_FALSE(find_metal("unobtainium"));
  CHECK_FALSE(find_cortex("Human-Femur"));
  CHECK_FALSE(find_tissue(""));
}
