//! What is known of the links at one step of a proof, and what follows from it at once.

use super::area::{Area, Question};

/// What is known of a group's supply.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Supply {
    /// It is supplied: a source, or decided.
    Yes,
    /// It is not.
    No,
    /// Either.
    Open,
}

/// What is known at one step.
#[derive(Clone, Debug)]
pub(super) struct Known {
    /// By group of the problem.
    pub supply: Vec<Supply>,
    /// By group of the problem: the least grade that whatever supplies it carries.
    pub grade: Vec<usize>,
    /// By flow: whether it may be chosen.
    pub may: Vec<bool>,
    /// By flow: whether it must be.
    pub must: Vec<bool>,
}

impl Known {
    /// What is known before any decision; `None` where nothing can hold.
    pub fn at_first(question: &Question<'_>, area: &Area) -> Option<Self> {
        let groups = &question.problem.groups;
        let mut supply: Vec<Supply> =
            groups.iter().map(|group| if group.source { Supply::Yes } else { Supply::No }).collect();
        area.groups.iter().for_each(|group| supply[*group] = Supply::Open);
        let grade = groups.iter().map(|group| group.grade).collect();
        let known = Self { supply, grade, may: vec![true; area.flows.len()], must: vec![false; area.flows.len()] };
        known.settled(question, area)
    }

    /// The same with a group supplied or not.
    pub fn with_supply(mut self, question: &Question<'_>, area: &Area, group: usize, supplied: bool) -> Option<Self> {
        self.decide_supply(group, supplied)?;
        self.settled(question, area)
    }

    /// The same with a flow chosen or not.
    pub fn with_flow(mut self, question: &Question<'_>, area: &Area, flow: usize, chosen: bool) -> Option<Self> {
        if chosen {
            self.must[flow] = true;
        } else {
            self.may[flow] = false;
        }
        self.settled(question, area)
    }

    /// The same without some flows.
    pub fn without(mut self, question: &Question<'_>, area: &Area, given_up: &[usize]) -> Option<Self> {
        given_up.iter().for_each(|flow| self.may[*flow] = false);
        self.settled(question, area)
    }

    /// Whether every group is decided, and where it is supplied, by which flow.
    pub fn is_complete(&self, area: &Area) -> bool {
        let fed = |group: usize| area.into[group].iter().any(|flow| self.must[*flow]);
        area.groups.iter().all(|group| match self.supply[*group] {
            Supply::Open => false,
            Supply::No => true,
            Supply::Yes => fed(*group),
        })
    }

    fn settled(mut self, question: &Question<'_>, area: &Area) -> Option<Self> {
        while self.concludes(question, area)? {}
        Some(self)
    }

    /// One round of conclusions: whether there was any, or `None` where nothing can hold.
    fn concludes(&mut self, question: &Question<'_>, area: &Area) -> Option<bool> {
        let mut any = false;
        let is_source = |group: usize| question.problem.groups[group].source;
        for (index, flow) in area.flows.iter().enumerate() {
            if !self.must[index] {
                continue;
            }
            if !self.may[index] {
                return None;
            }
            any |= self.decide_supply(flow.head, true)?;
            if !is_source(flow.tail) {
                any |= self.decide_supply(flow.tail, true)?;
                any |= self.grade[flow.tail] < self.grade[flow.head];
                self.grade[flow.tail] = self.grade[flow.tail].max(self.grade[flow.head]);
            }
        }
        let mut fed_by = vec![None; question.problem.groups.len()];
        for (index, flow) in area.flows.iter().enumerate().filter(|(index, _)| self.must[*index]) {
            fed_by[flow.head] = Some(index);
        }
        for index in 0..area.flows.len() {
            if self.may[index] && !self.may_still(area, index, &fed_by) {
                self.may[index] = false;
                any = true;
            }
        }
        let reached = self.reached(question, area);
        for &group in &area.groups {
            if !reached[group] && self.supply[group] != Supply::No {
                self.decide_supply(group, false)?;
                any = true;
            }
            if self.supply[group] == Supply::Yes {
                let into: Vec<usize> = area.into[group].iter().copied().filter(|flow| self.may[*flow]).collect();
                any |= self.must_be_one_of(&into)?;
            }
        }
        for flows in &area.laid_down {
            let open: Vec<usize> = flows.iter().copied().filter(|flow| self.may[*flow]).collect();
            any |= self.must_be_one_of(&open)?;
        }
        Some(any)
    }

    fn decide_supply(&mut self, group: usize, supplied: bool) -> Option<bool> {
        let decided = if supplied { Supply::Yes } else { Supply::No };
        let is_news = self.supply[group] == Supply::Open;
        if !is_news && self.supply[group] != decided {
            return None;
        }
        self.supply[group] = decided;
        Some(is_news)
    }

    fn must_be_one_of(&mut self, flows: &[usize]) -> Option<bool> {
        match flows {
            [] => None,
            [only] => Some(!std::mem::replace(&mut self.must[*only], true)),
            _ => Some(false),
        }
    }

    fn may_still(&self, area: &Area, index: usize, fed_by: &[Option<usize>]) -> bool {
        let flow = &area.flows[index];
        // The two ways of one link stand beside each other.
        let is_twin_chosen = [index.wrapping_sub(1), index + 1]
            .into_iter()
            .any(|twin| area.flows.get(twin).is_some_and(|other| other.link == flow.link) && self.must[twin]);
        self.supply[flow.head] != Supply::No
            && self.supply[flow.tail] != Supply::No
            && self.grade[flow.head] < flow.prices.len()
            && fed_by[flow.head].is_none_or(|by| by == index)
            && !is_twin_chosen
    }

    fn reached(&self, question: &Question<'_>, area: &Area) -> Vec<bool> {
        let mut reached: Vec<bool> = question.problem.groups.iter().map(|group| group.source).collect();
        let mut any = true;
        while std::mem::take(&mut any) {
            for (index, flow) in area.flows.iter().enumerate() {
                if self.may[index] && reached[flow.tail] && !reached[flow.head] {
                    reached[flow.head] = true;
                    any = true;
                }
            }
        }
        reached
    }
}
