//! The direct-current resistance of a conductor from first principles.

use super::awg::area_of;
use super::temperature_coefficient::warmed;
use crate::{CircularMils, ConductorMetal, Gauge, OutOfRange, ResistancePerLength, Resistivity, Temperature};

/// The resistivity of annealed copper of 100 % conductivity at 20 °C: a fifty-eighth of an ohm mm² per metre.
/// Published: IEC 60028 and NBS Handbook 100, as reproduced in the Industrial Power Engineering Handbook, p. 970.
const COPPER: f64 = 1.0 / 58.0;
/// The conductivity of aluminium for building wire, of that of copper. Published: the same page.
const ALUMINIUM_CONDUCTIVITY: f64 = 0.61;
/// The share of the area of copper-clad aluminium that is copper. From memory: ASTM B566, class 10.
const COPPER_OF_CLAD: f64 = 0.10;
/// What the lay of the strands adds to the length of each: 2 %. From memory: ASTM B8.
const STRANDING: f64 = 1.02;
/// What a tinned coating adds, up to 10 AWG and above. By hand, from the coated and uncoated columns of the code's table
/// as remembered: 3.19/3.07, 2.01/1.93 and 1.26/1.21 are 1.04; 0.786/0.764 and 0.510/0.491 are 1.03 and 1.04.
const TINNING_OF_THIN: f64 = 1.04;
const TINNING_OF_THICK: f64 = 1.03;
/// The temperature the resistivities refer to.
const REFERENCE: Temperature = Temperature::celsius(20.0);

/// How a conductor is made up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Form {
    /// One wire: house cable up to 10 AWG.
    Solid,
    /// Several wires laid round each other.
    Stranded,
}

/// What decides the resistance of a conductor, but for its temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Conductor {
    /// The size.
    pub gauge: Gauge,
    /// The metal.
    pub metal: ConductorMetal,
    /// Solid or stranded.
    pub form: Form,
    /// Whether copper is tinned, as it is under rubber until about 1960. Nothing for other metals.
    pub tinned: bool,
}

impl Conductor {
    /// A solid bare copper conductor, as in house cable.
    #[must_use]
    pub const fn solid_copper(gauge: Gauge) -> Self {
        Self { gauge, metal: ConductorMetal::Copper, form: Form::Solid, tinned: false }
    }

    /// The resistance per length of this conductor at a temperature.
    ///
    /// # Formula
    /// `R = rho / A * (T - T0) / (20 - T0)`, times 1.02 if stranded, times 1.04 (up to 10 AWG) or 1.03 if tinned.
    /// At 60 Hz and up to 4/0 AWG the resistance to alternating current is within 3 % of it, to 6 AWG within 0.2 %.
    ///
    /// # Source
    /// NBS Handbook 100; ASTM B8 and the code's coated column for the two factors, from memory.
    ///
    /// # Range
    /// Every size and metal; -50 °C to 250 °C.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other temperature.
    ///
    /// # Example
    /// ```
    /// use electrical::{Gauge, Temperature, formulas::conductor_resistance::Conductor};
    /// let hot = Conductor::solid_copper(Gauge::AWG_12).resistance(Temperature::celsius(75.0))?;
    /// assert_eq!(format!("{:.2}", hot.as_ohms_per_thousand_feet()), "1.93");
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn resistance(self, temperature: Temperature) -> Result<ResistancePerLength, OutOfRange> {
        let at_reference = of_area(resistivity(self.metal), area_of(self.gauge))?;
        let stranding = if self.form == Form::Stranded { STRANDING } else { 1.0 };
        let thin = self.gauge <= Gauge::AWG_10;
        let tinning = match (self.tinned && self.metal == ConductorMetal::Copper, thin) {
            (false, _) => 1.0,
            (true, true) => TINNING_OF_THIN,
            (true, false) => TINNING_OF_THICK,
        };
        warmed(at_reference * (stranding * tinning), self.metal, REFERENCE, temperature)
    }
}

/// The resistivity of a conductor metal as drawn for building wire, at 20 °C.
///
/// # Formula
/// Copper 1/58 Ω·mm²/m; aluminium that over 0.61; copper-clad aluminium both side by side, a tenth of it copper.
///
/// # Source
/// NBS Handbook 100 and Circular 31; ASTM B566, class 10, from memory.
///
/// # Range
/// Every metal. Chemistry handbooks print the resistivity of the pure metals, 2.7 % and 6.2 % lower: not these.
///
/// # Example
/// ```
/// use electrical::{ConductorMetal, formulas::conductor_resistance::resistivity};
/// let copper = resistivity(ConductorMetal::Copper).as_ohm_circular_mils_per_foot();
/// assert_eq!(format!("{copper:.2}"), "10.37");
/// ```
#[must_use]
pub const fn resistivity(metal: ConductorMetal) -> Resistivity {
    Resistivity::ohm_square_millimetres_per_metre(match metal {
        ConductorMetal::Copper => COPPER,
        ConductorMetal::Aluminium => COPPER / ALUMINIUM_CONDUCTIVITY,
        ConductorMetal::CopperCladAluminium => {
            COPPER / (COPPER_OF_CLAD + (1.0 - COPPER_OF_CLAD) * ALUMINIUM_CONDUCTIVITY)
        }
    })
}

/// The resistance per length of a conductor of some area.
///
/// # Formula
/// `R = rho / A`.
///
/// # Source
/// The definition of resistivity.
///
/// # Range
/// Areas from 1 to 2 000 000 circular mils.
///
/// # Errors
/// [`OutOfRange`] for any other area.
///
/// # Example
/// ```
/// use electrical::{CircularMils, Resistivity, formulas::conductor_resistance::of_area};
/// let cool = of_area(Resistivity::ohm_circular_mils_per_foot(10.371), CircularMils::new(6530.0))?;
/// assert_eq!(format!("{:.3}", cool.as_ohms_per_thousand_feet()), "1.588");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn of_area(resistivity: Resistivity, area: CircularMils) -> Result<ResistancePerLength, OutOfRange> {
    let area = OutOfRange::check("area of a conductor, circular mils", area.get(), 1.0, 2e6)?;
    let per_foot = resistivity.as_ohm_circular_mils_per_foot() / area;
    Ok(ResistancePerLength::ohms_per_thousand_feet(per_foot * 1000.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Diameter;
    use crate::Length;
    use crate::formulas::assert_near;
    use crate::formulas::awg::{area, diameter};
    use ConductorMetal::{Aluminium, Copper};

    /// The resistance in ohms per thousand feet.
    fn found(number: i8, metal: ConductorMetal, form: Form, celsius: f64) -> f64 {
        let gauge = Gauge::from_number(number).unwrap();
        let conductor = Conductor { gauge, metal, form, tinned: false };
        conductor.resistance(Temperature::celsius(celsius)).unwrap().as_ohms_per_thousand_feet()
    }

    /// Published: HyperPhysics, American wire gauge table, hyperphysics.phy-astr.gsu.edu/hbase/Tables/wirega.html.
    #[test]
    fn solid_copper_at_20_c_is_that_of_the_published_table() {
        let published = [
            (18, 6.385, 0.0038),
            (16, 4.016, 0.0024),
            (14, 2.525, 0.0015),
            (8, 0.6282, 0.000_37),
            (6, 0.3951, 0.000_23),
            (2, 0.1563, 0.000_093),
            (0, 0.0983, 0.000_06),
            (-3, 0.049, 0.000_05),
        ];
        for (number, expected, tolerance) in published {
            assert_near(found(number, Copper, Form::Solid, 20.0), expected, tolerance);
        }
    }

    /// Published: github.com/DerejeKitaw/Component-Communication, src/app/wire-constants.ts, a copy of the code's
    /// table: stranded copper at 75 °C.
    #[test]
    fn stranded_copper_at_75_c_is_that_of_the_code() {
        for (number, expected, tolerance) in
            [(10, 1.24, 0.009_92), (2, 0.194, 0.001_55), (0, 0.122, 0.000_98), (-3, 0.0608, 0.000_49)]
        {
            assert_near(found(number, Copper, Form::Stranded, 75.0), expected, tolerance);
        }
    }

    /// Published: the same copy: stranded aluminium at 75 °C.
    #[test]
    fn stranded_aluminium_at_75_c_is_that_of_the_code() {
        for (number, expected, tolerance) in [(14, 5.17, 0.041_36), (8, 1.28, 0.010_24), (6, 0.808, 0.006_46)] {
            assert_near(found(number, Aluminium, Form::Stranded, 75.0), expected, tolerance);
        }
    }

    /// From memory: the code's table of conductors, solid columns at 75 °C.
    #[test]
    fn solid_conductors_at_75_c_are_those_of_the_code_as_remembered() {
        for (number, metal, expected, tolerance) in [
            (10, Copper, 1.21, 0.006_05),
            (8, Copper, 0.764, 0.003_82),
            (12, Aluminium, 3.18, 0.0159),
            (10, Aluminium, 2.0, 0.01),
        ] {
            assert_near(found(number, metal, Form::Solid, 75.0), expected, tolerance);
        }
    }

    /// Published: electrician2.com/weltrain05/lpage135.html, a course page on voltage drop: 4.99 Ω per 1000 ft.
    #[test]
    fn stranded_16_awg_at_75_c_is_that_of_the_course_page() {
        assert_near(found(16, Copper, Form::Stranded, 75.0), 4.99, 0.06);
    }

    /// Published: brunsengineering.com/nec-table-9, a copy: alternating current at 60 Hz, rounded to two figures.
    #[test]
    fn small_conductors_have_the_same_resistance_at_60_hz() {
        for (number, expected) in [(14, 3.1), (12, 2.0), (10, 1.2)] {
            assert_near(found(number, Copper, Form::Stranded, 75.0), expected, 0.05);
        }
    }

    /// Published: NBS Handbook 100 (1966) and Circular 31: 0.15328 Ω·g/m² and 8.89 g/cm³ give 0.017241 Ω·mm²/m.
    #[test]
    fn the_resistivity_of_copper_is_that_of_its_mass_resistivity_and_density() {
        assert_near(0.15328 / 8.89, 0.017_241, 2e-6);
        assert_near(resistivity(Copper).as_ohm_square_millimetres_per_metre(), 0.017_241, 2e-6);
    }

    /// By hand: 0.0172414e-6 / 5.067075e-10 × 0.3048 = 10.371, over 0.61 it is 17.002.
    #[test]
    fn resistivities_in_ohm_circular_mils_per_foot() {
        assert_near(resistivity(Copper).as_ohm_circular_mils_per_foot(), 10.371, 0.002);
        assert_near(resistivity(Aluminium).as_ohm_circular_mils_per_foot(), 17.002, 0.002);
    }

    /// By hand: 17.0016 × 1000 / 6529.95 = 2.6036 and 17.0016 × 1000 / 10383 = 1.6374.
    #[test]
    fn solid_aluminium_at_20_c() {
        assert_near(found(12, Aluminium, Form::Solid, 20.0), 2.604, 0.003);
        assert_near(found(10, Aluminium, Form::Solid, 20.0), 1.638, 0.003);
    }

    /// Published: coursehero.com/file/6669542, a wire table of pure copper (1.678e-8 Ω·m): 0.000793 Ω/m for 4 AWG.
    /// Building wire is 2.7 % above it; pure aluminium (2.650e-8) is 6.2 % below the wire.
    #[test]
    fn tables_of_pure_copper_are_too_low_for_wire() {
        let of_5_189_mm = area(Diameter::millimetres(5.189)).unwrap();
        let pure = of_area(Resistivity::ohm_metres(1.678e-8), of_5_189_mm).unwrap().as_ohms_per_metre();
        assert_near(pure, 0.000_793, 1e-6);
        let wire = of_area(resistivity(Copper), of_5_189_mm).unwrap().as_ohms_per_metre();
        assert_near(wire / pure, 1.0275, 0.001);
        assert_near(2.650e-8 / resistivity(Aluminium).as_ohm_metres(), 1.0 - 0.062, 0.001);
    }

    /// Published: clutchprep.com/physics/practice-problems/141991: the inputs. By hand: 1.72e-8 × 24 / 3.3006e-6 = 0.12507.
    #[test]
    fn a_run_of_24_m_of_2_05_mm_copper() {
        let per_length = of_area(Resistivity::ohm_metres(1.72e-8), area(Diameter::millimetres(2.05)).unwrap()).unwrap();
        assert_near((per_length * Length::micrometres(24_000_000)).as_ohms(), 0.125, 0.0005);
    }

    /// Published: US Navy NEETS module 4, table 1-2: 10.4 Ω for 1000 ft of 20 AWG at 25 °C, 20.8 Ω for 2000 ft.
    #[test]
    fn the_navys_20_awg_at_25_c() {
        let cool = of_area(resistivity(Copper), area(diameter(20).unwrap()).unwrap()).unwrap();
        let found = warmed(cool, Copper, REFERENCE, Temperature::celsius(25.0)).unwrap();
        assert_near((found * Length::feet(1000)).as_ohms(), 10.4, 0.06);
        assert_near((found * Length::feet(2000)).as_ohms(), 20.8, 0.12);
    }

    /// Published: a distributor's chart of copper wire resistance at two temperatures: 65 °C. Its column under 25 °C is that of 20 °C,
    /// 2.525 for 14 AWG, where 2.575 is right.
    #[test]
    fn the_distributors_chart_is_right_at_65_c_and_wrong_at_25_c() {
        for (number, expected, tolerance) in [(14, 2.97, 0.004), (12, 1.868, 0.003), (10, 1.175, 0.002)] {
            assert_near(found(number, Copper, Form::Solid, 65.0), expected, tolerance);
        }
        assert_near(found(14, Copper, Form::Solid, 25.0), 2.575, 0.002);
        assert!((found(14, Copper, Form::Solid, 25.0) - 2.525).abs() > 0.04);
    }

    /// From memory: the coated column of the code's table, 2.01 Ω for solid 12 AWG at 75 °C.
    #[test]
    fn a_tinned_conductor_takes_the_coated_column() {
        let tinned = Conductor { tinned: true, ..Conductor::solid_copper(Gauge::AWG_12) };
        let found = tinned.resistance(Temperature::celsius(75.0)).unwrap().as_ohms_per_thousand_feet();
        assert_near(found, 2.01, 0.01);
    }

    #[test]
    fn areas_and_temperatures_out_of_range_are_refused() {
        assert!(of_area(resistivity(Copper), CircularMils::new(0.0)).is_err());
        assert!(Conductor::solid_copper(Gauge::AWG_14).resistance(Temperature::celsius(400.0)).is_err());
    }
}
