//! A table from (node, set) to the label's index: open addressing with a fixed hash, so that every run is alike.

use super::label_setting::Set;

const FREE: u32 = u32::MAX;

#[derive(Default)]
pub(crate) struct LabelTable {
    slots: Vec<u32>,
    used: usize,
}

fn hash(node: u32, set: Set) -> u64 {
    let mut value = (set as u64) ^ ((set >> 64) as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    value ^= u64::from(node).wrapping_mul(0xd6e8_feb8_6659_fd93);
    value = (value ^ (value >> 32)).wrapping_mul(0xff51_afd7_ed55_8ccd);
    value = (value ^ (value >> 29)).wrapping_mul(0xc4ce_b9fe_1a85_ec53);
    value ^ (value >> 32)
}

impl LabelTable {
    /// The index stored for the key; `key_of` tells the key of an index.
    pub(crate) fn get(&self, node: u32, set: Set, key_of: impl Fn(u32) -> (u32, Set)) -> Option<u32> {
        if self.slots.is_empty() {
            return None;
        }
        let mask = self.slots.len() - 1;
        let mut slot = hash(node, set) as usize & mask;
        while self.slots[slot] != FREE {
            if key_of(self.slots[slot]) == (node, set) {
                return Some(self.slots[slot]);
            }
            slot = (slot + 1) & mask;
        }
        None
    }

    /// Stores the index of a key that is not there yet.
    pub(crate) fn put(&mut self, node: u32, set: Set, index: u32, key_of: impl Fn(u32) -> (u32, Set)) {
        if (self.used + 1) * 2 > self.slots.len() {
            let old = std::mem::take(&mut self.slots);
            self.slots = vec![FREE; (old.len() * 2).max(1024)];
            for index in old.into_iter().filter(|&index| index != FREE) {
                let (node, set) = key_of(index);
                self.place(node, set, index);
            }
        }
        self.place(node, set, index);
        self.used += 1;
    }

    fn place(&mut self, node: u32, set: Set, index: u32) {
        let mask = self.slots.len() - 1;
        let mut slot = hash(node, set) as usize & mask;
        while self.slots[slot] != FREE {
            slot = (slot + 1) & mask;
        }
        self.slots[slot] = index;
    }
}
