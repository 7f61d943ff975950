import type { EvidenceTag } from '../evidence/evidence-tag.js';
import type { Caution, Hazard } from './hazard.js';

const caution = (
  id: string,
  hazard: Hazard,
  text: string,
  tag: EvidenceTag = 'commonPractice',
  citation: string | null = null,
): Caution => ({
  id,
  hazard,
  text,
  source: { tag, citation },
});

/**
 * Shipped cautions, one for each hazard, in our own words. The maker's instructions, local rules and licensed practice
 * come first; these remind of them and replace none.
 */
export const cautionFor: Readonly<Record<Hazard, Caution>> = {
  petrolVapour: caution(
    'petrol-vapour',
    'petrolVapour',
    'Petrol vapour is heavier than air and gathers in pits and drains. No ignition source nearby; drain fuel with a fuel retriever only.',
    'published',
    'HSE OC 803/71; HSE guidance on motor vehicle repair, fire and explosion',
  ),
  solventOnRunningEngine: caution(
    'solvent-on-running-engine',
    'solventOnRunningEngine',
    'Solvent on a running engine can flash. Prefer smoke; otherwise short puffs, away from leads and exhaust, extinguisher at hand.',
  ),
  fuelVapourLines: caution(
    'fuel-vapour-lines',
    'fuelVapourLines',
    'Test fuel-vapour lines and intake with inert gas at low pressure. Never blow shop air into them: air and vapour can ignite.',
  ),
  exhaustGas: caution(
    'exhaust-gas',
    'exhaustGas',
    'Connect the exhaust extraction, or work outdoors, before the engine runs.',
    'commonPractice',
    'compare HSE HSG261',
  ),
  runningEngine: caution(
    'running-engine',
    'runningEngine',
    'Keep hands, leads, loose clothing and rings away from belts and fans. An electric fan can start with the ignition off.',
  ),
  hotParts: caution(
    'hot-parts',
    'hotParts',
    'Coolant, exhaust and heater hoses are hot. Let them cool before the housing comes off.',
  ),
  hotPressureCap: caution(
    'hot-pressure-cap',
    'hotPressureCap',
    'Never open the pressure cap of a hot cooling system; scalding coolant is driven out. Wait until it is cold.',
  ),
  ignitionHighVoltage: caution(
    'ignition-high-voltage',
    'ignitionHighVoltage',
    'High voltage: never pull leads on a running engine. Keep away with a pacemaker.',
  ),
  springLoadedPlate: caution(
    'spring-loaded-plate',
    'springLoadedPlate',
    'The plate snaps shut: fingers out of the bore. On motor-driven plates ignition off and key out.',
  ),
  vehicleMovement: caution(
    'vehicle-movement',
    'vehicleMovement',
    'Parking brake on, wheels chocked, neutral or park, nobody in front of the van.',
  ),
  vehicleRaised: caution(
    'vehicle-raised',
    'vehicleRaised',
    'Put the van on stands of sufficient rating before any play check; never rely on the jack alone.',
  ),
  cranking: caution(
    'cranking',
    'cranking',
    'Disable fuel and ignition before cranking: fuel can spray from an open plug hole. Keep clear of the openings.',
  ),
  batteryGas: caution(
    'battery-gas',
    'batteryGas',
    'Batteries give off explosive gas: no sparks or flames, rings and watches off, eye protection on.',
  ),
  brakeDust: caution(
    'brake-dust',
    'brakeDust',
    'Dust of old linings may contain asbestos. Never use an air line or a dry brush; wet it or use a filtered extractor.',
  ),
  wheelOff: caution(
    'wheel-off',
    'wheelOff',
    'Secure the van before a wheel comes off, and tighten the nuts to the stated torque afterwards.',
  ),
  roadTest: caution(
    'road-test',
    'roadTest',
    'Insured driver, van lawful on the road, and a second person to read the instruments.',
  ),
  chemicals: caution(
    'chemicals',
    'chemicals',
    'Cleaner attacks coated bores and sensors of some housings; find out first. Gloves and ventilation.',
  ),
};
