/** A US label, invented. */
export const TOMATOES = `label: crushed tomatoes, no salt added
also: [plain crushed tomatoes]
like: canned crushed tomato
serving: 1/2 cup (120 g)
values:
  energy: 35 kcal
  fat: 0.5 g
  saturated: 0 g
  sodium: 15 mg
  carbohydrate: 8 g
  fibre: 2 g
  sugars: 5 g
  protein: 2 g
`;

/** An EU label, invented: it tells millilitres, and the serving was weighed. */
export const DRINK = `label: plain oat drink
also: [oat drink]
serving: 200 ml
weighs: 206 g
per: 100 ml
values:
  energy: 190 kJ
  fat: 0.9 g
  saturated: 0.1 g
  carbohydrate: 7.4 g
  sugars: 3.6 g
  fibre: 0.9 g
  protein: 0.8 g
  salt: 0.1 g
`;
