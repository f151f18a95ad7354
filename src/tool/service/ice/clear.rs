//! Clear ice: blocks frozen from one side in a tub, how long that takes, and what is cut from them.

use super::{BLOCK, CUT, FREEZER, GLASS, IceForm, LONG, PIECE, SAW, THICK, WATER, WIDE, hours, mm, weight};
use crate::craft::ice::{DEEPER, FILM, Piece, clear_in, together};
use crate::quantity::{Amount, Mass, Ratio};
use crate::screen::plan::{HOUR, MINUTE, Need, Plan, Step};
use crate::screen::{Answer, Bench, Figure, Problem, Row, Strip, Tone, plural};
use crate::text;

/// Thicknesses that are taken, mm.
const DEEP: (f64, f64) = (5.0, 300.0);
/// Freezers that are, °C.
const COLD: (f64, f64) = (-40.0, -1.0);

/// Blocks of clear ice for so many serves, worked out.
pub(super) struct Clear {
    edges: [f64; 3],
    /// A block of it.
    block: Mass,
    /// Seconds until it is frozen: at the earliest, at the latest.
    seconds: [f64; 2],
    /// A cube for a glass.
    piece: Mass,
    cube: Piece,
    laid: [u32; 3],
    /// Cubes wanted.
    wanted: u32,
}

impl Clear {
    /// Cubes that a block gives.
    pub(super) fn in_block(&self) -> u32 {
        together(self.laid)
    }

    fn blocks(&self) -> u32 {
        self.wanted.div_ceil(self.in_block().max(1))
    }

    /// "30 cubes of 46.1 mm".
    pub(super) fn cubes(&self, bench: &Bench) -> String {
        let count = text::count(f64::from(self.wanted), bench.decimal);
        format!("{count} {} of {}", plural(self.wanted as usize, "cube", "cubes"), mm(self.cube.edges()[0], bench))
    }

    /// "2 × 1.6 kg".
    pub(super) fn blocks_of(&self, bench: &Bench) -> String {
        format!("{} × {}", text::count(f64::from(self.blocks()), bench.decimal), weight(self.block, bench))
    }

    /// "31 h before".
    pub(super) fn before(&self, bench: &Bench) -> String {
        format!("{} h before", hours(self.seconds[1], bench))
    }

    fn size(&self, bench: &Bench) -> String {
        let [long, wide, thick] = self.edges.map(|edge| text::count(edge, bench.decimal));
        format!("{long} × {wide} × {thick} mm")
    }

    pub(super) fn plan(&self, bench: &Bench) -> Plan {
        let (blocks, [early, late]) = (self.blocks(), self.seconds);
        let count = text::count(f64::from(blocks), bench.decimal);
        let tubs = format!("{count} insulated {}", plural(blocks as usize, "tub", "tubs"));
        let times = |mass: Mass, count: u32| Mass::from_g(mass.g() * f64::from(count)).unwrap_or(mass);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let wait = late as u32;
        let words = format!(
            "Freeze {} clear in {tubs}, open, filled a third deeper; look after {} h",
            self.size(bench),
            hours(early, bench)
        );
        let cut = format!("Cut {}, back into the cold", self.cubes(bench));
        let steps = vec![
            Step::work("freeze", words, 10 * MINUTE).then_wait(wait),
            Step::work("temper", "Leave the blocks out until they turn clear: cold ice cracks", 5 * MINUTE)
                .then_wait(15 * MINUTE),
            Step::work("cut", cut, (self.wanted.min(240) * MINUTE / 2).max(5 * MINUTE))
                .giving(Some(Amount::Mass(times(self.piece, self.wanted)))),
        ];
        let water = times(self.block, blocks);
        let water = Mass::from_g(water.g() * DEEPER).unwrap_or(water);
        Plan {
            title: "Clear ice".into(),
            steps,
            needs: vec![Need::of("water", Amount::Mass(water))],
            ..Plan::default()
        }
    }
}

impl IceForm {
    /// The edges of the block, all of them typed.
    pub(super) fn edges(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<[f64; 3]> {
        let long = bench.length(LONG, &self.long, BLOCK, problems);
        let wide = bench.length(WIDE, &self.wide, BLOCK, problems);
        let thick = bench.length(THICK, &self.thick, DEEP, problems);
        Some([long?, wide?, thick?])
    }

    /// What a cut takes of a piece; nothing where that is not typed.
    pub(super) fn cut(&self, piece: Option<Piece>, bench: &Bench, problems: &mut Vec<Problem>) -> Option<f64> {
        let cut = match self.cut.trim() {
            "" => 0.0,
            cut => bench.length(CUT, cut, (0.0, 20.0), problems)?,
        };
        if piece.is_some_and(|piece| piece.edges().into_iter().any(|edge| edge < cut)) {
            problems
                .push(Problem::new(CUT, "A cut takes more than the piece is thick. Type what the saw takes, like 2."));
            return None;
        }
        Some(cut)
    }

    /// Blocks for so many serves of a cube in the glass.
    pub(super) fn block(
        &self,
        piece: Mass,
        serves: Ratio,
        bench: &Bench,
        problems: &mut Vec<Problem>,
    ) -> Option<Clear> {
        let cube = Piece::cube(piece);
        if cube.edges()[0] < PIECE.0 {
            problems.push(Problem::new(GLASS, "Too small to cut. Type what a piece weighs, like 90 g."));
            return None;
        }
        let edges = self.edges(bench, problems);
        let cut = self.cut(Some(cube), bench, problems);
        let water = bench.temperature(WATER, &self.water, (0.0, 100.0), problems);
        let freezer = bench.temperature(FREEZER, &self.freezer, (f64::MIN, f64::MAX), problems)?;
        if !(COLD.0..=COLD.1).contains(&freezer.celsius()) {
            let words = "Type how cold the freezer is, from −40 to −1 °C, like −18: at 0 °C and above nothing freezes.";
            problems.push(Problem::new(FREEZER, words));
        }
        let edges = edges?;
        let seconds = clear_in(edges[2], water?, freezer)?;
        // To the hour, to the half of it where it takes less than ten.
        let step = f64::from(if seconds[1] < 10.0 * f64::from(HOUR) { HOUR / 2 } else { HOUR });
        let seconds = [(seconds[0] / step).floor().max(1.0) * step, (seconds[1] / step).ceil() * step];
        let laid = cube.cut_from(edges, cut?);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let wanted = (serves.value() - 1e-9).ceil() as u32;
        let block = Piece::Block(edges).mass()?;
        problems.is_empty().then_some(Clear { edges, block, seconds, piece, cube, laid, wanted })
    }

    pub(super) fn clear(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let serves = bench.count("", &self.serves, &mut Vec::new()).unwrap_or(Ratio::ONE);
        let piece = bench.mass(GLASS, &self.glass, &mut answer.problems);
        let clear = piece.and_then(|piece| self.block(piece, serves, bench, &mut answer.problems));
        let Some(clear) = clear else {
            return answer.without_answer("Type how thick, the tub, the freezer, and one piece.");
        };
        let [early, late] = clear.seconds.map(|seconds| hours(seconds, bench));
        answer.strip = Strip {
            figures: vec![Figure::new(format!("{early}–{late}"), "h to freeze")],
            also: format!("Start {}, look after {early} h", clear.before(bench)),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.rows_title = "A block";
        let row =
            |name: &str, amount: String, detail: String| Row { name: name.into(), amount, detail, ..Row::default() };
        answer.rows.push(row("weighs", weight(clear.block, bench).to_string(), clear.size(bench)));
        let count = clear.in_block();
        if count == 0 {
            let side = mm(clear.cube.edges()[0], bench);
            let words =
                format!("A cube of that is {side} a side: larger than the block. Freeze it thicker, or type less.");
            answer.problems.push(Problem::new(GLASS, words));
        } else {
            let lost = 1.0 - f64::from(count) * clear.piece.g() / clear.block.g();
            let lost = format!("{} lost to cuts and trim", text::percent(lost.max(0.0), bench.decimal));
            let cubes = text::count(f64::from(count), bench.decimal);
            answer.rows.push(row("gives cubes", format!("{cubes} of {}", mm(clear.cube.edges()[0], bench)), lost));
            let all = text::count(f64::from(clear.wanted), bench.decimal);
            answer.rows.push(row("for the night", clear.blocks_of(bench), format!("{all} cubes")));
            answer.plan = Some(clear.plan(bench));
        }
        answer.cautions.push(SAW.into());
        answer.notes.push("Fill a third deeper than that, no lid, and take it out before it is frozen through: the last of the water is cloudy.".into());
        let [still, fan] = FILM.map(|film| text::plain(film, 0, bench.decimal));
        answer.remarks.push(format!("Stefan 1891, formula from memory: t = ρL/(k ΔT) · (x²/2 + k x/h), and before it the cooling of the water. h from {still} W/(m² K) in still air to {fan} with a fan, k 2.2 W/(m K): from memory; frozen from the top alone, the tub keeps all other sides warm. Ice 0.9167 g/ml, 333.4 kJ/kg: IAPWS. The ice's own cooling is left out: some 4 % more."));
        answer.remarks.push("Cubes are laid all the same way; a third deeper, a quarter of an hour to temper and half a minute a cube are rules of thumb. Note how long yours took.".into());
        answer
    }
}
