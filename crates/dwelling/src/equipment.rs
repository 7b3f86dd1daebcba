//! What is plugged in, as far as it matters to grounding.

use crate::names::names;

names! {
    /// Equipment that an opening serves.
    Equipment {
        /// Refrigerator.
        Refrigerator = "refrigerator",
        /// Freezer.
        Freezer = "freezer",
        /// Room or window air conditioner.
        AirConditioner = "air-conditioner",
        /// Clothes washer.
        ClothesWasher = "clothes-washer",
        /// Clothes dryer.
        ClothesDryer = "clothes-dryer",
        /// Dishwasher.
        Dishwasher = "dishwasher",
        /// Waste disposer.
        WasteDisposer = "waste-disposer",
        /// Computer or other information equipment.
        Computer = "computer",
        /// Sump pump.
        SumpPump = "sump-pump",
        /// Aquarium equipment.
        Aquarium = "aquarium",
        /// Motor-operated tools, hand-held or stationary.
        MotorTools = "motor-tools",
        /// Lawn mower, hedge clipper or snow blower.
        GardenTools = "garden-tools",
        /// Portable hand lamp for work.
        HandLamp = "hand-lamp",
        /// Surge protector.
        SurgeProtector = "surge-protector",
        /// Microwave oven.
        Microwave = "microwave",
        /// Range.
        Range = "range",
        /// Medical equipment with a grounding pin.
        MedicalEquipment = "medical-equipment",
        /// Security or fire alarm system.
        AlarmSystem = "alarm-system",
        /// Television or audio equipment.
        Television = "television",
        /// Double-insulated or two-pin equipment: lamps, clocks, chargers.
        TwoPin = "two-pin",
        /// Snow-melting, deicing or pipe-heating equipment.
        HeatTracing = "heat-tracing",
    }
}
