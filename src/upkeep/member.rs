//! One member of the ensemble as the last weeks before a day show it.

use super::harvest::{WEEK_D, measured_per_week, weekly_take};
use super::setting::KeptTank;
use crate::design::Taken;
use crate::source::Band;
use crate::startup::{
    Member, ModelEventKind, Parameters, Sample, SoilStores, Stands, day_state, stands,
};
use crate::units::Mass;

/// Milligrams in a gram.
const MG_PER_G: f64 = 1e3;

/// A group of plants that is thinned or trimmed.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Cut {
    /// Net growth before anything is taken, 1/d.
    pub(super) growth_per_d: f64,
    /// What stands on the day, g dry.
    pub(super) stand_g: f64,
    /// Taken out, g dry a week.
    pub(super) taken_g: f64,
    /// Nitrogen in it, mg a week.
    taken_n_mg: f64,
    /// Phosphorus in it, mg a week.
    taken_p_mg: f64,
}

/// What a member shows; amounts are those of the whole tank.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct MemberFigures {
    pub(super) floaters: Cut,
    pub(super) stems: Cut,
    /// Dry mass of floaters that closes the surface, g.
    pub(super) closed_g: f64,
    /// The account of nitrogen, mg a week.
    pub(super) account: Account,
    /// Phosphorus taken out with plants, mg a week.
    pub(super) removed_p_mg: f64,
    /// Nitrogen that the plants would take well fed in their light, mg a week.
    pub(super) demand_n_mg: f64,
    /// Nitrate nitrogen gained beside water changes, mg/L a week.
    pub(super) nitrate_n_rise: f64,
    /// Alkalinity used up beside water changes, meq/L a week.
    pub(super) alkalinity_used: f64,
    /// The soil's stores.
    pub(super) stores: SoilStores,
    /// How long the bed's phosphorus lasts, d; none where it does not dwindle.
    pub(super) phosphorus_d: Option<f64>,
    /// On the day.
    pub(super) last: Sample,
    /// Sampled week by week over the last year.
    pub(super) weeks: Vec<Sample>,
}

/// Nitrogen by its ways, mg a week.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Account {
    pub(super) feed: f64,
    pub(super) tap: f64,
    pub(super) dosed: f64,
    pub(super) soil: f64,
    pub(super) lost: f64,
    pub(super) removed: f64,
    pub(super) kept: f64,
}

impl Account {
    /// What comes in less what goes out and what stays.
    pub(super) fn residual(&self) -> f64 {
        self.feed + self.tap + self.dosed + self.soil - self.lost - self.removed - self.kept
    }

    /// What feed, tap and salts leave once losses are met.
    pub(super) fn without_soil(&self) -> f64 {
        self.feed + self.tap + self.dosed - self.lost
    }
}

impl MemberFigures {
    /// Reads a member off its days; none where they end before the day.
    pub(super) fn of(
        setting: &KeptTank<'_>,
        bands: &Parameters<Band>,
        member: &Member,
    ) -> Option<Self> {
        let mut values = member.numbers.iter();
        let numbers = bands.map(|band| values.next().copied().unwrap_or(band.typical));
        let last = *member.days.get(setting.day as usize)?;
        let window = Window::of(setting, &member.days)?;
        let inputs = &setting.inputs;
        let stands: Vec<Stands> = window
            .days
            .iter()
            .map(|sample| stands(inputs, &numbers, sample))
            .collect();
        let (floaters, stems) = window.cuts(&stands, &last);
        let account = window.account(&numbers);
        let closed_g = numbers.floating.closed_layer * setting.floor_m2();
        let demand = day_state(inputs, &numbers, &last).nitrogen_taken.g_d();
        let mut seen = Self {
            floaters,
            stems,
            closed_g,
            account,
            removed_p_mg: floaters.taken_p_mg + stems.taken_p_mg,
            demand_n_mg: demand * MG_PER_G * WEEK_D,
            nitrate_n_rise: window.nitrate_n_rise(&numbers),
            alkalinity_used: window.alkalinity_used(),
            stores: SoilStores::of(inputs, &numbers),
            phosphorus_d: window.phosphorus_d(),
            last,
            weeks: setting
                .week_days()
                .filter_map(|day| member.days.get(day as usize))
                .copied()
                .collect(),
        };
        seen.thin_by_the_week(setting);
        seen.weigh(setting);
        Some(seen)
    }

    /// Thins floaters once a week where the run does so all the time: they grow over
    /// meanwhile, as far as nitrate that is left over feeds them.
    fn thin_by_the_week(&mut self, setting: &KeptTank<'_>) {
        let (cut, water_l) = (&mut self.floaters, setting.design.water().litres());
        if cut.taken_g <= 0.0 {
            return;
        }
        let spare_mg = self.nitrate_n_rise.max(0.0) * water_l;
        let grown_g = weekly_take(Mass::from_g(cut.stand_g), cut.growth_per_d).g();
        let more = (grown_g / cut.taken_g)
            .min(1.0 + spare_mg / cut.taken_n_mg)
            .max(1.0)
            - 1.0;
        let more_mg = cut.taken_n_mg * more;
        self.removed_p_mg += cut.taken_p_mg * more;
        self.account.removed += more_mg;
        self.account.kept -= more_mg;
        self.nitrate_n_rise -= more_mg / water_l;
        for taken in [&mut cut.taken_g, &mut cut.taken_n_mg, &mut cut.taken_p_mg] {
            *taken *= 1.0 + more;
        }
    }

    /// Takes prunings that were weighed for those of the model.
    fn weigh(&mut self, setting: &KeptTank<'_>) {
        let taken = &setting.design.draft().harvest.taken;
        let weighed = |of: fn(&Taken) -> Option<Mass>, fresh_per_dry: f64| {
            let fresh = taken
                .iter()
                .filter_map(|taken| Some((taken.day, of(taken)?.g())));
            let fresh_g = measured_per_week(fresh, f64::from(setting.day))?;
            (fresh_per_dry > 0.0).then(|| fresh_g / fresh_per_dry)
        };
        let before = self.account.removed;
        let floaters = weighed(|taken| taken.floaters, setting.floaters.fresh_per_dry);
        let stems = weighed(|taken| taken.stems, setting.stems.fresh_per_dry);
        let state = &self.last.state;
        let floating = (state.floating, state.floating_n, state.floating_p);
        let fast = (state.fast, state.fast_n, state.fast_p);
        for (cut, weighed, content) in [
            (&mut self.floaters, floaters, floating),
            (&mut self.stems, stems, fast),
        ] {
            if let Some(dry_g) = weighed {
                self.account.removed -= cut.taken_n_mg;
                self.removed_p_mg -= cut.taken_p_mg;
                cut.take(dry_g, content);
                self.account.removed += cut.taken_n_mg;
                self.removed_p_mg += cut.taken_p_mg;
            }
        }
        let more_mg = self.account.removed - before;
        self.nitrate_n_rise -= more_mg / setting.design.water().litres();
    }
}

impl Cut {
    /// So much of a stand of a content: mass, nitrogen and phosphorus.
    fn take(&mut self, dry_g: f64, (mass, nitrogen, phosphorus): (f64, f64, f64)) {
        let of = |element: f64| if mass > 0.0 { element / mass } else { 0.0 };
        self.taken_g = dry_g;
        self.taken_n_mg = dry_g * of(nitrogen) * MG_PER_G;
        self.taken_p_mg = dry_g * of(phosphorus) * MG_PER_G;
    }
}

/// The last weeks before a day.
struct Window<'a> {
    setting: &'a KeptTank<'a>,
    /// A sample for each whole day, both ends included.
    days: &'a [Sample],
    first: &'a Sample,
    last: &'a Sample,
}

impl<'a> Window<'a> {
    fn of(setting: &'a KeptTank<'a>, days: &'a [Sample]) -> Option<Self> {
        let (from, to) = setting.window;
        let days = days.get(from as usize..=to as usize)?;
        let (first, last) = (days.first()?, days.last()?);
        (days.len() > 1).then_some(Self {
            setting,
            days,
            first,
            last,
        })
    }

    fn length_d(&self) -> f64 {
        self.last.day - self.first.day
    }

    /// What changes by the week from the first day to the last.
    fn per_week(&self, of: impl Fn(&Sample) -> f64) -> f64 {
        (of(self.last) - of(self.first)) * WEEK_D / self.length_d()
    }

    /// The same of what is given in g/m2, mg in the whole tank.
    fn mg_per_week(&self, of: impl Fn(&Sample) -> f64) -> f64 {
        self.per_week(of) * MG_PER_G * self.setting.floor_m2()
    }

    /// The sample before each water change, with its share.
    fn changes(&self) -> impl Iterator<Item = (&Sample, f64)> {
        let (from, to) = (self.first.day, self.last.day);
        let events = self.setting.inputs.events.iter();
        events.filter_map(move |event| match event.kind {
            ModelEventKind::WaterChange(share) if event.day >= from && event.day < to => {
                let before = self.days.get((event.day - from).floor() as usize)?;
                Some((before, share.fraction()))
            }
            _ => None,
        })
    }

    /// What is gained by the week beside the changes of water.
    fn gained(&self, of: impl Fn(&Sample) -> f64, source: f64) -> f64 {
        let changed: f64 = self
            .changes()
            .map(|(before, share)| share * (of(before) - source))
            .sum();
        self.per_week(&of) + changed * WEEK_D / self.length_d()
    }

    fn nitrate_n_rise(&self, numbers: &Parameters<f64>) -> f64 {
        self.gained(|sample| sample.state.nitrate, numbers.tap.nitrate)
    }

    fn alkalinity_used(&self) -> f64 {
        self.gained(|sample| sample.state.alkalinity_used, 0.0)
    }

    /// The account of nitrogen: stores, losses and what is taken as the run counts them.
    fn account(&self, numbers: &Parameters<f64>) -> Account {
        let stores = |sample: &Sample| {
            let state = &sample.state;
            state.fast_soil_n + state.slow_soil_n + state.stable_soil_n
        };
        let gone = |sample: &Sample| sample.state.denitrified_n + sample.state.harvested_n;
        let added = |sample: &Sample| sample.state.added_n;
        let stays =
            |sample: &Sample| sample.nitrogen_g_m2 - stores(sample) - gone(sample) + added(sample);
        let tap = &numbers.tap;
        let in_tap = tap.ammonia + tap.nitrite + tap.nitrate;
        let changed: f64 = self.changes().map(|(_, share)| share).sum();
        let water_l = self.setting.design.water().litres();
        let (from, to) = (self.first.day, self.last.day);
        let [feed, tap, dosed] = [
            self.setting.feed_n_mg(numbers, from, to),
            changed * in_tap * water_l,
            self.setting.dosed_n_mg(from, to),
        ]
        .map(|mg| mg / self.length_d() * WEEK_D);
        let to_air = self.mg_per_week(|sample| sample.state.denitrified_n);
        Account {
            feed,
            tap,
            dosed,
            soil: -self.mg_per_week(stores),
            lost: to_air + feed + tap + dosed - self.mg_per_week(added),
            removed: self.mg_per_week(|sample| sample.state.harvested_n),
            kept: self.mg_per_week(stays),
        }
    }

    /// What floaters and stems give off, by their shares of the nitrogen taken.
    fn cuts(&self, stands: &[Stands], last: &Sample) -> (Cut, Cut) {
        let count = stands.len() as f64;
        let mean = |of: &dyn Fn(&Stands) -> f64| stands.iter().map(of).sum::<f64>() / count;
        let by_floaters = mean(&|stands| stands.floating.taken_n_g_m2_d);
        let by_stems = mean(&|stands| stands.fast.taken_n_g_m2_d);
        let both = by_floaters + by_stems;
        let removed_mg = self.mg_per_week(|sample| sample.state.harvested_n);
        let state = &last.state;
        let floor_m2 = self.setting.floor_m2();
        let cut = |growth_per_d: f64, part: f64, content: (f64, f64, f64)| {
            let (mass, nitrogen, _) = content;
            let mut cut = Cut {
                growth_per_d,
                stand_g: mass * floor_m2,
                ..Cut::default()
            };
            if both > 0.0 && nitrogen > 0.0 {
                let n_mg = removed_mg * part / both;
                cut.take(n_mg / MG_PER_G / (nitrogen / mass), content);
            }
            cut
        };
        (
            cut(
                mean(&|stands| stands.floating.growth_per_d),
                by_floaters,
                (state.floating, state.floating_n, state.floating_p),
            ),
            cut(
                mean(&|stands| stands.fast.growth_per_d),
                by_stems,
                (state.fast, state.fast_n, state.fast_p),
            ),
        )
    }

    fn phosphorus_d(&self) -> Option<f64> {
        let held = |sample: &Sample| {
            let state = &sample.state;
            state.reducible_p + state.stable_p + state.soil_p
        };
        let lost = -self.per_week(held) / WEEK_D;
        (lost > 0.0).then(|| held(self.last) / lost)
    }
}
