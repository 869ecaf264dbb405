#include "cases/help/method_sources.h"

namespace gapstrain::cases {

const std::vector<MethodSource>& method_sources() {
  static const std::vector<MethodSource> sources{
      {"smoothing of meshes", "Knupp 2000, Int. J. Numer. Meth. Engng 48, 401-420"},
      {"shell of four nodes, bending and shear", "Dvorkin & Bathe 1984"},
      {"shell of four nodes, membrane", "Ibrahimbegovic, Taylor & Wilson 1990"},
      {"drilling rotations", "Hughes & Brezzi 1989"},
      {"shell of three nodes, bending and shear", "Lee, Lee & Bathe 2014, Comput Struct 138:12"},
      {"shell of three nodes, membrane", "Felippa 2003, Comput Methods Appl Mech Eng 192:2125"},
      {"shear area of shafts", "Cowper 1966, J Appl Mech 33:335"},
      {"substructures that float", "Farhat & Roux 1991, Int J Numer Methods Eng 32:1205"},
      {"substructures that float", "Felippa & Park 2002, Int J Numer Methods Eng 53:2007"},
      {"contact, active sets", "Hintermueller, Ito & Kunisch 2003, SIAM J Optim 13:865"},
      {"contact, pivoting", "Judice & Pires 1994, Comput Oper Res 21:587"},
      {"friction", "Alart & Curnier 1991, Comput Methods Appl Mech Eng 92:353"},
      {"friction, the last resort", "Rockafellar 1976, SIAM J Control Optim 14:877"},
      {"error of the mesh", "Zienkiewicz & Zhu 1987, Int J Numer Methods Eng 24:337"},
      {"strain that tissue bears", "Perren 1979, Clin Orthop 138:175", true},
      {"tissue that forms in a gap", "L. E. Claes and C. A. Heigele, J. Biomech. 32 (1999) 255-266", true},
      {"fatigue, mean stress", "G. Sines 1959, in Metal Fatigue, ed. G. Sines and J. L. Waisman", true},
      {"fatigue, life over stress", "O. H. Basquin 1910, Proc. ASTM 10:625"},
      {"fatigue, notches", "H. Neuber 1946, Theory of Notch Stresses", true},
      {"fatigue, notches", "R. E. Peterson 1974, Stress Concentration Factors", true},
      {"screws bonded and softer in bone", "Stefanek, Pahr & Synek 2024, J Mech Behav Biomed Mater 157:106634",
       true},
      {"fatigue, damage added up", "A. Palmgren 1924, Z. VDI 68:339"},
      {"fatigue, damage added up", "M. A. Miner 1945, J. Appl. Mech. 12:A159"},
      {"plate span and screw density", "Gautier & Sommer 2003, Injury 34 Suppl 2", true},
      {"pull-out of screws", "Chapman et al. 1996, J Biomech Eng 118:391", true},
      {"shear strength of cortex", "Turner et al. 2001, Calcif Tissue Int 69:373"},
      {"sizes of bones over body mass", "Alexander et al. 1979, J. Zool. 189:305", true},
      {"designs for variance-based sensitivity", "A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259-270"},
      {"indices of total effect", "M. J. W. Jansen, Comput. Phys. Commun. 117 (1999) 35-43"},
      {"intervals of shares", "C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404-413"},
  };
  return sources;
}

}  // namespace gapstrain::cases
