//! Says what the code asks of one opening and what every remedy is worth there.

use crate::answering::{dwelling_of, exit_code, read_file, write_json, write_text};
use crate::command_error::CommandError;
use crate::law::{CodeFlags, settle};
use crate::named::box_named;
use crate::{name_parser, page};
use dwelling::{
    CableInBox, CableKind, Cables, Clamps, Equipment, GroundFact, Holding, Job, NearWater, PathObstacle,
    ProtectiveBreaker, RoomUse, Want, Wetness,
};
use electrical::{Amperes, ConductorMetal, Gauge, Length, Volume};
use remedies::{Facts, options_answer, options_of_box};
use rulebook::{FillContents, Opening, TakingOut};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Say what one opening is owed and which remedies are lawful there
///
/// Either an opening of a survey (SURVEY BOX), or one described by flags. What is not said is not known, and is answered
/// with "find out", never with a pass.
#[derive(Debug, clap::Args)]
#[command(after_help = "Examples:
  thirdwire options --edition 2020 --room bedroom --breaker \"15 A\" --cable nm-two-wire --ground none \\
      --box \"12.5 in3\" --cables-in-box 2 --gauge 14 --clamps inside --serves computer
  thirdwire options my-house.toml B2-1 --json")]
pub struct Args {
    /// A survey
    #[arg(value_name = "SURVEY", requires = "box_id", conflicts_with = "room")]
    survey: Option<PathBuf>,
    /// A box of the survey
    #[arg(value_name = "BOX")]
    box_id: Option<String>,
    #[command(flatten)]
    code: CodeFlags,
    /// What the room is used for
    #[arg(long, value_parser = name_parser!(RoomUse), required_unless_present = "survey")]
    room: Option<RoomUse>,
    /// What the box holds now
    #[arg(long, value_parser = name_parser!(Holding), default_value = "unknown")]
    holds: Holding,
    /// The rating of the breaker or fuse, such as "15 A"
    #[arg(long, value_parser = survey::rating_flag)]
    breaker: Option<Amperes>,
    /// The wiring method of the circuit
    #[arg(long, value_parser = name_parser!(CableKind), default_value = "unknown")]
    cable: CableKind,
    /// The size of the circuit's conductors
    #[arg(long, value_parser = survey::gauge_flag)]
    gauge: Option<Gauge>,
    /// The metal of the circuit's conductors
    #[arg(long, value_parser = metal, default_value = "copper")]
    metal: ConductorMetal,
    /// What is known of the ground
    #[arg(long, value_parser = name_parser!(GroundFact), default_value = "unknown")]
    ground: GroundFact,
    /// The volume of the box, such as "12.5 in3", or its trade size, such as "3x2x2-1/2"
    #[arg(long = "box", value_name = "VOLUME", value_parser = survey::volume_flag)]
    volume: Option<Volume>,
    /// How many cables enter the box
    #[arg(long, value_name = "COUNT", value_parser = clap::value_parser!(u32).range(0..=40))]
    cables_in_box: Option<u32>,
    /// Where the box clamps its cables
    #[arg(long, value_parser = name_parser!(Clamps))]
    clamps: Option<Clamps>,
    /// What is plugged in, several with commas between
    #[arg(long, value_delimiter = ',', value_parser = name_parser!(Equipment))]
    serves: Vec<Equipment>,
    /// In a kitchen: whether it serves a countertop
    #[arg(long, value_name = "YES|NO", value_parser = yes_or_no)]
    countertop: Option<bool>,
    /// How far the nearest sink is
    #[arg(long, value_name = "DISTANCE", value_parser = survey::distance_flag)]
    sink: Option<Length>,
    /// What the path to the sink passes, several with commas between
    #[arg(long, value_delimiter = ',', value_parser = name_parser!(PathObstacle), requires = "sink")]
    sink_path_passes: Vec<PathObstacle>,
    /// How far the nearest bathtub or shower is
    #[arg(long, value_name = "DISTANCE", value_parser = survey::distance_flag)]
    tub: Option<Length>,
    /// How wet the place is
    #[arg(long, value_parser = name_parser!(Wetness))]
    wetness: Option<Wetness>,
    /// How high it is above the floor
    #[arg(long, value_parser = survey::height_flag)]
    height: Option<Length>,
    /// Whether it serves one appliance in a space set aside for it
    #[arg(long, value_name = "YES|NO", value_parser = yes_or_no)]
    dedicated_space: Option<bool>,
    /// Whether it can be reached quickly
    #[arg(long, value_name = "YES|NO", value_parser = yes_or_no)]
    readily_accessible: Option<bool>,
    /// It is fed over the shared neutral of a multiwire circuit
    #[arg(long)]
    shared_neutral: bool,
    /// Its circuit is one half of a multiwire circuit, though it is fed beyond the point where the two part
    #[arg(long)]
    multiwire: bool,
    /// The protective breakers made for the panel, with commas between, or "none"
    #[arg(long, value_name = "BREAKERS", value_parser = breakers)]
    made_for_panel: Option<Breakers>,
    /// Whether a device could sit beside the panel
    #[arg(long, value_name = "YES|NO", value_parser = yes_or_no)]
    room_beside_panel: Option<bool>,
    /// Whether another receptacle lies upstream of it on its circuit
    #[arg(long, value_name = "YES|NO", value_parser = yes_or_no)]
    upstream: Option<bool>,
    /// What the owner wants here; `remove` asks whether the receptacle may be taken out
    #[arg(long, value_parser = name_parser!(Want), default_value = "leave")]
    want: Want,
    /// It is a new outlet, not a replacement
    #[arg(long)]
    new_outlet: bool,
    /// Answer as JSON (its schema: `thirdwire schema options`)
    #[arg(long)]
    json: bool,
}

/// The breakers made for a panel.
#[derive(Clone, Debug)]
struct Breakers(Vec<ProtectiveBreaker>);

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let answer = match (&args.survey, &args.box_id) {
        (Some(path), Some(id)) => {
            let text = read_file(path)?;
            let dwelling = dwelling_of(&text, args.json)?;
            let code = settle(&args.code, &dwelling.job, &text.folder, args.json)?.code;
            let index = box_named(&dwelling, id)?;
            options_of_box(&Facts::gather(&dwelling, code), index)
        }
        _ => options_answer(
            &opening(args),
            &settle(&args.code, &Job::named(String::new()), Path::new(""), args.json)?.code,
        ),
    };
    if args.json {
        write_json(&answer)?
    } else {
        write_text(&page::options::render(&answer))?
    }
    Ok(exit_code(!answer.not_checked))
}

fn opening(args: &Args) -> Opening {
    let near = |distance: Option<Length>, passes: &[PathObstacle]| {
        distance.map(|distance| NearWater { distance, passes: passes.to_vec() })
    };
    Opening {
        room_use: args.room.unwrap_or(RoomUse::Unknown),
        holds: args.holds,
        breaker: args.breaker,
        gauge: args.gauge,
        metal: args.metal,
        ground: args.ground,
        existing_outlet: !args.new_outlet,
        countertop: args.countertop,
        sink: near(args.sink, &args.sink_path_passes),
        tub: near(args.tub, &[]),
        wetness: args.wetness,
        height: args.height,
        dedicated_space: args.dedicated_space,
        readily_accessible: args.readily_accessible,
        serves: args.serves.clone(),
        on_shared_neutral: args.shared_neutral,
        half_of_set: args.multiwire,
        made_for_panel: args.made_for_panel.as_ref().map(|breakers| breakers.0.clone()),
        room_beside_panel: args.room_beside_panel,
        has_upstream: args.upstream,
        supply: None,
        cable: Some(args.cable).filter(|cable| *cable != CableKind::Unknown),
        taking_out: (args.want == Want::Remove).then(TakingOut::default),
        built_into: None,
        fill: FillContents {
            volume: args.volume,
            cables: cables(args),
            clamps: args.clamps,
            support_fittings: 0,
            other_straps: 0,
            gangs: 1,
        },
    }
}

fn cables(args: &Args) -> Cables {
    let insulated = if args.shared_neutral { 3 } else { 2 };
    let cable = CableInBox { kind: args.cable, gauge: args.gauge, metal: args.metal, insulated };
    let count = args.cables_in_box.unwrap_or(0) as usize;
    Cables { known: vec![cable; count], complete: args.cables_in_box.is_some() }
}

fn yes_or_no(written: &str) -> Result<bool, String> {
    match written {
        "yes" | "true" => Ok(true),
        "no" | "false" => Ok(false),
        _ => Err("write yes or no, or leave the flag out where it is not known".to_owned()),
    }
}

fn metal(written: &str) -> Result<ConductorMetal, String> {
    match written {
        "copper" => Ok(ConductorMetal::Copper),
        "aluminium" | "aluminum" => Ok(ConductorMetal::Aluminium),
        "copper-clad-aluminium" | "copper-clad-aluminum" => Ok(ConductorMetal::CopperCladAluminium),
        _ => Err("the metals are copper, aluminium and copper-clad-aluminium".to_owned()),
    }
}

fn breakers(written: &str) -> Result<Breakers, String> {
    if written == "none" {
        return Ok(Breakers(Vec::new()));
    }
    let parse = name_parser!(ProtectiveBreaker);
    let list: Result<Vec<_>, _> = written.split(',').map(|name| parse(name.trim())).collect();
    list.map(Breakers)
}
