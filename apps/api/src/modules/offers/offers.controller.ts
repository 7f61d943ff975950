import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectOfferRequest,
  DeliveryPage,
  DeliveryResponse,
  ListDeliveriesQuery,
  ListOffersQuery,
  OfferPage,
  OfferPath,
  OfferResponse,
  OfferRevisions,
  RecordDeliveryRequest,
  RecordOfferRequest,
} from '@endfloat/contracts';
import {
  CorrectOfferUseCase,
  ListDeliveriesUseCase,
  ListOffersUseCase,
  RecordDeliveryUseCase,
  RecordOfferUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentDelivery, presentOffer, toDelivery, toOffer } from './offer.presenter.js';

@Controller('v1/offers')
export class OffersController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordOfferUseCase,
    private readonly correct: CorrectOfferUseCase,
    private readonly list: ListOffersUseCase,
    private readonly recordDelivery: RecordDeliveryUseCase,
    private readonly deliveries: ListDeliveriesUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'parts')
  @Answer(OfferResponse, { created: true, summary: 'Record what a supplier asks for a part' })
  async createOffer(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordOfferRequest,
  ): Promise<OfferResponse> {
    const { record, created } = await this.record.execute(caller, {
      id: request.id,
      offer: toOffer(request),
    });
    return created ? presentOffer(record) : alreadyThere(presentOffer(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(OfferPage, { summary: 'List offers for a kind of part or of a supplier' })
  async listOffers(@CurrentCaller() caller: Caller, @Query() query: ListOffersQuery): Promise<OfferPage> {
    const { componentType, supplier, asOf } = query;
    const page = await this.list.execute(caller, {
      componentType,
      supplier,
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentOffer);
  }

  @Get(':offerId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(OfferResponse, { summary: 'Show an offer, now or as it was known at a moment' })
  async getOffer(
    @CurrentCaller() caller: Caller,
    @Param() { offerId }: OfferPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<OfferResponse> {
    return presentOffer(await this.list.one(caller, offerId, asOf));
  }

  @Get(':offerId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(OfferRevisions, { summary: 'Every revision of an offer, oldest first' })
  async listOfferRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { offerId }: OfferPath,
  ): Promise<OfferRevisions> {
    return { items: (await this.list.revisions(caller, offerId)).map(presentOffer) };
  }

  @Post(':offerId/corrections')
  @Allow('owner', 'desk', 'parts')
  @Answer(OfferResponse, {
    created: true,
    location: ({ id }: OfferResponse) => `/v1/offers/${id}`,
    summary: 'Correct an offer',
  })
  async correctOffer(
    @CurrentCaller() caller: Caller,
    @Param() { offerId }: OfferPath,
    @Body() request: CorrectOfferRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<OfferResponse> {
    const command = { id: offerId, expected, offer: toOffer(request), reason: request.reason };
    return presentOffer(await this.correct.execute(caller, command));
  }

  @Post(':offerId/deliveries')
  @Allow('owner', 'desk', 'parts')
  @Answer(DeliveryResponse, {
    created: true,
    location: ({ id }: DeliveryResponse) => `/v1/deliveries/${id}`,
    summary: 'Record an order on an offer: promised for when, arrived when',
  })
  async createDelivery(
    @CurrentCaller() caller: Caller,
    @Param() { offerId }: OfferPath,
    @Body() request: RecordDeliveryRequest,
  ): Promise<DeliveryResponse> {
    const command = { id: request.id, offerId, delivery: toDelivery(request) };
    const { record, created } = await this.recordDelivery.execute(caller, command);
    return created ? presentDelivery(record) : alreadyThere(presentDelivery(record));
  }

  @Get(':offerId/deliveries')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(DeliveryPage, { summary: 'List the deliveries on an offer, latest order first' })
  async listDeliveries(
    @CurrentCaller() caller: Caller,
    @Param() { offerId }: OfferPath,
    @Query() query: ListDeliveriesQuery,
  ): Promise<DeliveryPage> {
    const page = await this.deliveries.execute(caller, {
      offerId,
      asOf: query.asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentDelivery);
  }
}
