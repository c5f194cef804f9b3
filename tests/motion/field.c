/* The equations of body.py as C, for an integrator that is compiled too. Lane axes, SI units. Only for time: body.py is the reference. */
#include <math.h>

typedef double vec[3];

struct shot {
    double mass, radius, moments[3], offset[3];
    double oil, ramp, ratio, inner, taper, mu_oil, mu_dry; /* inner and taper in metres from the lane's middle */
    double soft;                                           /* slip under which friction fades, m/s */
    double down, across;                                   /* the zone, see body.py */
};

static void cross(const vec a, const vec b, vec c) {
    c[0] = a[1] * b[2] - a[2] * b[1];
    c[1] = a[2] * b[0] - a[0] * b[2];
    c[2] = a[0] * b[1] - a[1] * b[0];
}
static double dot(const vec a, const vec b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

static void axes_of(const double *q, vec e[3]) {
    double a = q[0], b = q[1], c = q[2], d = q[3], n = 1 / (a * a + b * b + c * c + d * d);
    e[0][0] = (a * a + b * b - c * c - d * d) * n;
    e[0][1] = 2 * (b * c + a * d) * n;
    e[0][2] = 2 * (b * d - a * c) * n;
    e[1][0] = 2 * (b * c - a * d) * n;
    e[1][1] = (a * a - b * b + c * c - d * d) * n;
    e[1][2] = 2 * (c * d + a * b) * n;
    e[2][0] = 2 * (b * d + a * c) * n;
    e[2][1] = 2 * (c * d - a * b) * n;
    e[2][2] = (a * a - b * b - c * c + d * d) * n;
}

static void centre(const struct shot *s, vec e[3], vec d) {
    for (int k = 0; k < 3; k++) d[k] = s->offset[0] * e[0][k] + s->offset[1] * e[1][k] + s->offset[2] * e[2][k];
}

static void by_moments(const struct shot *s, vec e[3], const vec a, int power, vec out) {
    double k0 = dot(a, e[0]), k1 = dot(a, e[1]), k2 = dot(a, e[2]);
    const double *i = s->moments;
    if (power > 0) k0 *= i[0], k1 *= i[1], k2 *= i[2];
    else k0 /= i[0], k1 /= i[1], k2 /= i[2];
    for (int k = 0; k < 3; k++) out[k] = k0 * e[0][k] + k1 * e[1][k] + k2 * e[2][k];
}

static double friction(const struct shot *s, double x, double y) {
    double gone = s->down == 0 ? 0 : s->down == 1 ? (x - s->oil + s->ramp) / s->ramp : 1;
    double thin = s->across == 0 ? 0 : s->across == 1 ? (fabs(y) - s->inner) / s->taper : 1;
    double in_oil = s->mu_oil + thin * (s->mu_dry - s->mu_oil) * (1 - 1 / s->ratio);
    return (1 - gone) * in_oil + gone * s->mu_dry;
}

static void turned(const double *q, const vec w, double *out) {
    out[0] = (-w[0] * q[1] - w[1] * q[2] - w[2] * q[3]) / 2;
    out[1] = (w[0] * q[0] + w[1] * q[3] - w[2] * q[2]) / 2;
    out[2] = (w[1] * q[0] + w[2] * q[1] - w[0] * q[3]) / 2;
    out[3] = (w[2] * q[0] + w[0] * q[2] - w[1] * q[1]) / 2;
}

void slide(const struct shot *s, const double *y, double *out) {
    vec e[3], w, d, wd, h, left, arm, push, turn, by_force, t, ww;
    axes_of(y + 7, e);
    by_moments(s, e, y + 4, -1, w);
    centre(s, e, d);
    cross(w, d, wd);
    double vx = y[2] - wd[0], vy = y[3] - wd[1];
    double ux = vx - s->radius * w[1], uy = vy + s->radius * w[0], u = hypot(ux, uy);
    double mu = friction(s, y[0], y[1]), slow = mu / fmax(u, s->soft);
    push[0] = -slow * ux, push[1] = -slow * uy, push[2] = 1;
    arm[0] = -d[0], arm[1] = -d[1], arm[2] = -d[2] - s->radius;
    cross(arm, push, turn);
    by_moments(s, e, turn, -1, by_force);
    for (int k = 0; k < 3; k++) h[k] = y[4 + k];
    cross(h, w, t);
    by_moments(s, e, t, -1, left);
    cross(left, d, t);
    cross(w, wd, ww);
    double lift = 9.80665 + t[2] + ww[2];
    cross(by_force, d, t);
    double n = s->mass * lift / (1 - s->mass * t[2]);
    out[0] = vx, out[1] = vy;
    out[2] = n * push[0] / s->mass, out[3] = n * push[1] / s->mass;
    for (int k = 0; k < 3; k++) out[4 + k] = n * turn[k];
    turned(y + 7, w, out + 7);
}

void turn_over(const struct shot *s, const double *y, double *out) {
    vec e[3], w, d, arm, v, wd, t, c0, c1, c2;
    double m[3][3];
    axes_of(y + 5, e);
    centre(s, e, d);
    arm[0] = d[0], arm[1] = d[1], arm[2] = d[2] + s->radius;
    double square = dot(arm, arm);
    for (int j = 0; j < 3; j++)
        for (int k = 0; k < 3; k++)
            m[j][k] = s->moments[0] * e[0][j] * e[0][k] + s->moments[1] * e[1][j] * e[1][k] + s->moments[2] * e[2][j] * e[2][k]
                    + s->mass * ((j == k ? square : 0) - arm[j] * arm[k]);
    cross(m[1], m[2], c0), cross(m[2], m[0], c1), cross(m[0], m[1], c2);
    double det = dot(m[0], c0);
    for (int k = 0; k < 3; k++) w[k] = (y[2] * c0[k] + y[3] * c1[k] + y[4] * c2[k]) / det;
    v[0] = s->radius * w[1], v[1] = -s->radius * w[0], v[2] = 0;
    cross(w, d, wd);
    cross(v, wd, t);
    out[0] = v[0], out[1] = v[1];
    out[2] = -s->mass * (t[0] + 9.80665 * arm[1]);
    out[3] = -s->mass * (t[1] - 9.80665 * arm[0]);
    out[4] = -s->mass * t[2];
    turned(y + 5, w, out + 5);
}

void nothing(const struct shot *s, const double *y, double *out) { (void)s, (void)y, (void)out; }
