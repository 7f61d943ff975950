export { Allow, Public } from './access/allow.decorator.js';
export { alreadyThere, Answer, AnswerNothing, AnswerStream } from './answers/answer.decorator.js';
export { Pager, type PageRequest } from './answers/pager.js';
export { HttpProblem } from './problems/http-problem.js';
export { IfMatch, type ExpectedVersion } from './requests/expected-version.js';
export { BodyStream, CurrentCaller } from './requests/parameters.js';
export { currentCaller } from './requests/request-context.js';
export { BodyLimit, bulkBodyLimit, Consumes, Produces } from './requests/route-decorators.js';
export { useCase } from './use-case.provider.js';
