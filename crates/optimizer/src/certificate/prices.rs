//! What a set of cuts shows of one step: that no link is charged beyond its cost, and what everything then costs at least.

use std::collections::{BTreeMap, BTreeSet};

use super::area::{Area, Flow, Price, Question, price_of};
use super::known::{Known, Supply};
use super::least::{Elsewhere, Outlook, from_the_root_down, least};
use super::{Cut, Toward};

/// What is wrong with a set of cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wrong {
    /// A cut speaks of what is not there, or does not hold what it stands for.
    Cut,
    /// The links are charged more than this one costs.
    Overcharged(usize),
}

/// What everything costs at least at the prices of some cuts.
#[derive(Debug)]
pub(super) struct Reckoning {
    /// The least of all; nothing where nothing can hold.
    pub least: Option<Price>,
    /// By flow that may be chosen: what is left of its cost. What must be chosen is paid in full.
    pub left: Vec<Price>,
    /// By tree of the area, where links may hang its nodes elsewhere: what it costs in the least of all, and at least
    /// if one of them does, besides that link.
    hung: Vec<(Price, Option<Price>)>,
}

struct Prices {
    /// By flow and grade: what it is charged if it carries that grade or a higher one.
    paid: Vec<Vec<Price>>,
    charges: BTreeMap<(usize, usize), Price>,
    credits: BTreeMap<(usize, usize), BTreeMap<usize, Price>>,
    certain: Price,
}

/// Works out what a set of cuts shows.
pub(super) fn reckon(question: &Question<'_>, area: &Area, known: &Known, cuts: &[Cut]) -> Result<Reckoning, Wrong> {
    let mut prices = Prices {
        paid: area.flows.iter().map(|flow| vec![0; flow.prices.len()]).collect(),
        charges: BTreeMap::new(),
        credits: BTreeMap::new(),
        certain: 0,
    };
    for cut in cuts {
        prices.apply(question, area, known, cut)?;
    }
    let is_final = known.is_complete(area);
    let mut left = vec![0; area.flows.len()];
    let mut sum = Some(prices.certain);
    for (index, flow) in area.flows.iter().enumerate().filter(|(index, _)| known.may[*index]) {
        let left_of = left_of(flow, &prices.paid[index], known.grade[flow.head], is_final);
        if known.must[index] {
            sum = sum.map(|sum| sum + left_of);
        } else if left_of < 0 {
            return Err(Wrong::Overcharged(flow.link));
        } else {
            left[index] = left_of;
        }
    }
    let mut hung = Vec::with_capacity(area.trees.len());
    for &tree in &area.trees {
        let (of_tree, with_hung) = tree_least(question, area, known, tree, &prices, &left, is_final);
        sum = sum.zip(of_tree).map(|(sum, of_tree)| sum + of_tree);
        hung.push((of_tree.unwrap_or(0), with_hung));
    }
    Ok(Reckoning { least: sum, left, hung })
}

/// The least that is left of a flow's cost at a grade that it may carry.
fn left_of(flow: &Flow, paid: &[Price], grade: usize, is_final: bool) -> Price {
    let mut sum: Price = 0;
    let left = flow.prices.iter().zip(paid).map(|(price, paid)| {
        sum += paid;
        price - sum
    });
    let mut left = left.skip(grade);
    if is_final { left.next().unwrap_or(0) } else { left.min().unwrap_or(0) }
}

impl Prices {
    fn apply(&mut self, question: &Question<'_>, area: &Area, known: &Known, cut: &Cut) -> Result<(), Wrong> {
        let problem = question.problem;
        let node_at = |(tree, node): (usize, usize)| problem.trees.get(tree).and_then(|tree| tree.nodes.get(node));
        let group = match cut.toward {
            Toward::Node { tree, node } => node_at((tree, node)).ok_or(Wrong::Cut)?.group,
            Toward::Group(group) => group,
        };
        let mut is_in = vec![false; problem.groups.len()];
        for &one in &cut.groups {
            if problem.groups.get(one).is_none_or(|group| group.source) {
                return Err(Wrong::Cut);
            }
            is_in[one] = true;
        }
        let nodes = || cut.lands.iter().chain(&cut.suits);
        if is_in.get(group) != Some(&true) || nodes().any(|at| node_at(*at).is_none()) {
            return Err(Wrong::Cut);
        }
        let value = price_of(cut.value);
        if value < 0 {
            // One link at most supplies a group, and it is supplied if and only if one does.
            if cut.groups != [group] || nodes().next().is_some() {
                return Err(Wrong::Cut);
            }
            for &flow in &area.into[group] {
                if let Some(paid) = self.paid[flow].first_mut() {
                    *paid += value;
                }
            }
        } else {
            self.charge_flows(question, area, known, cut, (&is_in, known.grade[group], value));
        }
        match cut.toward {
            Toward::Node { tree, node } => *self.charges.entry((tree, node)).or_default() += value,
            Toward::Group(_) if known.supply[group] == Supply::Yes => self.certain += value,
            Toward::Group(_) if known.supply[group] == Supply::Open => self.certain += value.min(0),
            Toward::Group(_) => {}
        }
        Ok(())
    }

    fn charge_flows(
        &mut self,
        question: &Question<'_>,
        area: &Area,
        known: &Known,
        cut: &Cut,
        (is_in, grade, value): (&[bool], usize, Price),
    ) {
        let mut credited = BTreeSet::new();
        for (index, flow) in area.flows.iter().enumerate() {
            let leads_in = known.may[index] && is_in[flow.head] && !is_in[flow.tail] && grade < flow.prices.len();
            if !leads_in {
                continue;
            }
            let of_head =
                |(tree, node): &&(usize, usize)| question.problem.trees[*tree].nodes[*node].group == flow.head;
            let suits = cut.suits.iter().find(of_head);
            let Some(&at) = suits.or_else(|| cut.lands.iter().find(|at| flow.lands.contains(at))) else {
                self.paid[index][grade] += value;
                continue;
            };
            let options = 0..question.options[at.0][at.1].len();
            let carried = grade.max(known.grade[flow.head]);
            let with_it = options.filter(|option| question.goes_with(flow, carried, at, *option));
            credited.extend(with_it.map(|option| (at, option)));
        }
        for (at, option) in credited {
            *self.credits.entry(at).or_default().entry(option).or_default() += value;
        }
    }
}

/// What a tree costs at least, and at least besides the link if some link that may do so hangs a node elsewhere.
fn tree_least(
    question: &Question<'_>,
    area: &Area,
    known: &Known,
    tree: usize,
    prices: &Prices,
    left: &[Price],
    is_final: bool,
) -> (Option<Price>, Option<Price>) {
    let nodes = &question.problem.trees[tree].nodes;
    let outlook = |(node, given): (usize, &crate::problem::Node)| Outlook {
        parent: given.parent,
        behind_load: given.behind_load,
        supply: known.supply[given.group],
        charge: prices.charges.get(&(tree, node)).copied().unwrap_or(0),
        credits: prices.credits.get(&(tree, node)).cloned().unwrap_or_default(),
        landings: 0,
        grade: 0,
        arrives: None,
        elsewhere: Elsewhere::Never,
    };
    let mut outlooks: Vec<Outlook> = nodes.iter().enumerate().map(outlook).collect();
    note_landings(area, known, tree, &mut outlooks, |node| nodes[node].group);
    let mut hung = BTreeSet::new();
    for (_, flow) in area.flows.iter().enumerate().filter(|(index, _)| known.must[*index]) {
        if let Some((_, node, parent)) = flow.hangs.filter(|(of, ..)| *of == tree) {
            if !hung.insert(node) {
                return (None, None);
            }
            outlooks[node].parent = parent;
            outlooks[node].behind_load = false;
        }
    }
    let mut lightest: Option<Price> = None;
    let mut loose = outlooks.clone();
    for (index, flow) in area.flows.iter().enumerate() {
        if let Some((_, node, _)) = flow.hangs.filter(|(of, ..)| *of == tree && known.may[index] && !known.must[index])
            && !hung.contains(&node)
        {
            lightest = Some(lightest.map_or(left[index], |other| other.min(left[index])));
            let how = if nodes[node].group == flow.head { Elsewhere::Supplied } else { Elsewhere::Anyhow };
            let so_far = &mut loose[node].elsewhere;
            *so_far = if matches!(*so_far, Elsewhere::Never) || *so_far == how { how } else { Elsewhere::Anyhow };
        }
    }
    let still = least(question, tree, &outlooks, is_final);
    let Some(lightest) = lightest else { return (still, None) };
    if from_the_root_down(&loose).is_none() {
        // The chosen links close a ring that one of the open ones may break: what they hang is then somewhere.
        for node in hung {
            loose[node].parent = nodes[node].parent;
            loose[node].elsewhere = Elsewhere::Anyhow;
        }
    }
    let moved = least(question, tree, &loose, is_final);
    let besides = moved.map(|moved| moved + lightest);
    (still.into_iter().chain(besides).min(), moved)
}

/// Counts the links that land for certain, and notes where one lands as soon as a group is supplied.
fn note_landings(area: &Area, known: &Known, tree: usize, outlooks: &mut [Outlook], group_of: impl Fn(usize) -> usize) {
    let land = |outlook: &mut Outlook, grade: usize| {
        outlook.landings += 1;
        outlook.grade = outlook.grade.max(grade);
    };
    let mut groups: BTreeSet<usize> = outlooks.iter().enumerate().map(|(node, _)| group_of(node)).collect();
    for (_, flow) in area.flows.iter().enumerate().filter(|(index, _)| known.must[*index]) {
        groups.remove(&flow.head);
        for (_, node) in flow.lands.iter().filter(|(of, _)| *of == tree) {
            land(&mut outlooks[*node], known.grade[flow.head]);
        }
    }
    for (node, outlook) in outlooks.iter_mut().enumerate() {
        let group = group_of(node);
        let mut into = area.into[group].iter().filter(|flow| known.may[**flow]).peekable();
        if groups.contains(&group)
            && into.peek().is_some()
            && into.all(|flow| area.flows[*flow].lands.contains(&(tree, node)))
        {
            match outlook.supply {
                Supply::Yes => land(outlook, known.grade[group]),
                Supply::Open => outlook.arrives = Some(known.grade[group]),
                Supply::No => {}
            }
        }
    }
}

impl Reckoning {
    /// What is known where there are no prices at all: that nothing is cheaper than anything can be.
    pub const fn of_nothing() -> Self {
        Self { least: Some(Price::MIN / 2), left: Vec::new(), hung: Vec::new() }
    }

    /// The flows of which none can be part of anything that costs less than this.
    pub fn too_dear(&self, question: &Question<'_>, area: &Area, known: &Known, target: Option<Price>) -> Vec<usize> {
        let Some(least) = self.least else { return Vec::new() };
        let besides = |index: usize| if area.flows[index].hangs.is_some() { 0 } else { self.left[index] };
        let mut far: Vec<Option<Price>> =
            question.problem.groups.iter().map(|group| group.source.then_some(0)).collect();
        let mut is_nearer = true;
        while std::mem::take(&mut is_nearer) {
            for (index, flow) in area.flows.iter().enumerate().filter(|(index, _)| known.may[*index]) {
                let through = far[flow.tail].map(|far| far + besides(index));
                if through.is_some_and(|through| far[flow.head].is_none_or(|far| through < far)) {
                    far[flow.head] = through;
                    is_nearer = true;
                }
            }
        }
        let costs = |index: usize| {
            let flow = &area.flows[index];
            let instead = match flow.hangs {
                None => 0,
                Some((tree, ..)) => {
                    let (in_all, with_hung) = self.hung[area.trees.iter().position(|one| *one == tree)?];
                    with_hung? - in_all
                }
            };
            Some(least + instead + far[flow.tail]? + self.left[index])
        };
        let is_too_dear = |index: &usize| {
            known.may[*index]
                && !known.must[*index]
                && costs(*index).is_none_or(|costs| target.is_some_and(|target| costs >= target))
        };
        (0..area.flows.len()).filter(is_too_dear).collect()
    }
}
