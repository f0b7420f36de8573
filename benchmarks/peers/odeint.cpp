// odeint's side of the comparison: see run. Rows as the benchmark program writes them, and checks against its finest solution first.
#include <chrono>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "shot.hpp"

struct Release
{
    double x, y, vx, vy, q[4];
    V3 spin;
    double endX, endTime;
};

static std::vector<Release> releases;
static Ball ball;

static void read(const std::string& folder)
{
    std::ifstream constants(folder + "/constants.csv");
    std::map<std::string, double> named;
    for (std::string name, value; std::getline(constants, name, ',') && std::getline(constants, value);) named[name] = std::stod(value);
    ball = {named.at("mass"), named.at("radius"), named.at("gravity"), named.at("drag"), named.at("halfWidth"), named.at("pinsAt"), named.at("touch"),
        named.at("mu1"), named.at("mu2"), named.at("y1"), named.at("y2"), {named.at("I1"), named.at("I2"), named.at("I3")}, {}, {named.at("d1"), named.at("d2"), named.at("d3")}};
    ball.inverse = {1 / ball.moments.x, 1 / ball.moments.y, 1 / ball.moments.z};
    std::ifstream file(folder + "/releases.csv");
    for (std::string line; std::getline(file, line);)
    {
        std::replace(line.begin(), line.end(), ',', ' ');
        std::istringstream in(line);
        Release r{};
        in >> r.x >> r.y >> r.vx >> r.vy >> r.q[0] >> r.q[1] >> r.q[2] >> r.q[3] >> r.spin.x >> r.spin.y >> r.spin.z >> r.endX >> r.endTime;
        if (!in) throw std::runtime_error("releases.csv: a line of thirteen numbers is expected: " + line);
        releases.push_back(r);
    }
}

struct Greatest
{
    double x = 0, time = 0, steps = 0, evaluations = 0;
};

template <class S>
static Greatest greatest(double tolerance)
{
    Greatest g;
    for (const Release& r : releases)
    {
        S shot(ball, tolerance);
        try
        {
            const auto end = shot.run(r.x, r.y, r.vx, r.vy, r.q, r.spin);
            g.x = std::max(g.x, std::abs(end.x - r.endX));
            g.time = std::max(g.time, std::abs(end.time - r.endTime));
        }
        catch (const std::runtime_error&)
        {
            // Too coarse to follow the shot at all.
            g.x = std::numeric_limits<double>::infinity();
        }
        g.steps += shot.steps;
        g.evaluations += shot.evaluations;
    }
    g.steps /= releases.size();
    g.evaluations /= releases.size();
    return g;
}

template <class S>
static double micros(double tolerance, int rounds)
{
    using clock = std::chrono::steady_clock;
    constexpr std::size_t Block = 32;
    double sum = 0;
    volatile double kept = 0;
    for (std::size_t block = 0; block < releases.size(); block += Block)
    {
        double least = 1e300;
        for (int round = 0; round < rounds; ++round)
        {
            const auto began = clock::now();
            for (std::size_t i = block; i < block + Block; ++i)
            {
                const Release& r = releases[i];
                S shot(ball, tolerance);
                kept = kept + shot.run(r.x, r.y, r.vx, r.vy, r.q, r.spin).x;
            }
            least = std::min(least, std::chrono::duration<double, std::micro>(clock::now() - began).count());
        }
        sum += least;
    }
    return sum / releases.size();
}

template <class S>
static void rows(const char* name)
{
    const double factor = std::pow(10, 0.1);
    for (const double mark : {1e-4, 1e-6})
    {
        double fine = mark;
        while (greatest<S>(fine).x > mark) fine /= factor;
        while (fine * factor < 1 && greatest<S>(fine * factor).x <= mark) fine *= factor;
        const Greatest g = greatest<S>(fine);
        std::printf("%s;%.0E;%.2E;%.2E;%.2E;%.1f\n", name, mark, fine, g.x, g.time, micros<S>(fine, 25));
        std::fprintf(stderr, "%s: %.0f steps, %.0f evaluations\n", name, g.steps, g.evaluations);
        std::fflush(stdout);
    }
}

template <class S>
static void check(const char* name, double tolerance)
{
    const Greatest g = greatest<S>(tolerance);
    std::printf("check;odeint %s at %.0E;%.1E;%.1E\n", name, tolerance, g.x, g.time);
    std::fflush(stdout);
}

int main(int count, char** arguments)
{
    if (count < 2)
    {
        std::fprintf(stderr, "usage: odeint FOLDER [series], FOLDER being where the benchmark program has written constants.csv and releases.csv; series: greatest errors over a series of tolerances, no times\n");
        return 2;
    }
    read(arguments[1]);
    if (count > 2)
    {
        for (double t = 1e-2; t > 1e-12; t /= 10)
        {
            check<Shot<Dopri5, true, true>>("dopri5, slow variables, by distance", t);
            check<Shot<Fehlberg78, true, true>>("fehlberg78, slow variables, by distance", t);
            check<Shot<Dopri5, false, false>>("dopri5, textbook variables", t);
            check<Shot<Fehlberg78, false, false>>("fehlberg78, textbook variables", t);
        }
        return 0;
    }
    check<Shot<Dopri5, true, true>>("dopri5, slow variables, by distance", 1e-11);
    check<Shot<Fehlberg78, true, true>>("fehlberg78, slow variables, by distance", 1e-11);
    check<Shot<Dopri5, false, false>>("dopri5, textbook variables", 1e-11);
    check<Shot<Fehlberg78, false, false>>("fehlberg78, textbook variables", 1e-11);
    rows<Shot<Dopri5, false, false>>("odeint dopri5, textbook");
    rows<Shot<CashKarp54, false, false>>("odeint cash_karp54, textbook");
    rows<Shot<Fehlberg78, false, false>>("odeint fehlberg78, textbook");
    rows<Shot<Dopri5, true, true>>("odeint dopri5, slow");
    rows<Shot<CashKarp54, true, true>>("odeint cash_karp54, slow");
    rows<Shot<Fehlberg78, true, true>>("odeint fehlberg78, slow");
    return 0;
}
